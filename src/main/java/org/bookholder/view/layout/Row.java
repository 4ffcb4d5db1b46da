package org.bookholder.view.layout;

import java.util.List;
import java.util.stream.Collectors;
import org.bookholder.follow.model.ReadingPosition;

/**
 * One row of text as it stands on the screen.
 *
 * @param index its index among the rows, from 0
 * @param face its typeface
 * @param pieces its words
 * @param middle middle of its capitals, in pixels from the layout's top
 * @param size type size in pixels
 * @param spokenBefore number of spoken words in the script before its first word
 * @param text its words, separated by single spaces
 * @param spoken number of spoken words in it
 * @param rightToLeft whether it runs from right to left
 * @param first position of its first word; the script's first for a row that is not read
 */
public record Row(
        int index,
        Face face,
        List<Piece> pieces,
        double middle,
        double size,
        int spokenBefore,
        String text,
        int spoken,
        boolean rightToLeft,
        ReadingPosition first) {
    /** Copies the list and checks that it is not empty. */
    public Row {
        pieces = List.copyOf(pieces);
        if (pieces.isEmpty()) {
            throw new IllegalArgumentException("row " + index + " must have a word");
        }
    }

    /** Makes a row from pieces. */
    static Row of(
            int index,
            Face face,
            List<Piece> pieces,
            double middle,
            double size,
            int spokenBefore,
            boolean rightToLeft) {
        Piece begin = pieces.get(0);
        return new Row(
                index,
                face,
                pieces,
                middle,
                size,
                spokenBefore,
                pieces.stream().map(Piece::text).collect(Collectors.joining(" ")),
                pieces.stream().mapToInt(Piece::spoken).sum(),
                rightToLeft,
                face == Face.READING ? new ReadingPosition(begin.line(), begin.word()) : ReadingPosition.START);
    }

    /** Whether it is read aloud. */
    public boolean isRead() {
        return face == Face.READING;
    }
}
