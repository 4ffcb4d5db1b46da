package org.bookholder.view;

import java.util.List;
import java.util.stream.Collectors;
import org.bookholder.follow.ReadingPosition;

/**
 * One row of text as it stands on the screen.
 *
 * @param index its number among the rows, from 0
 * @param face how it is set
 * @param pieces its words
 * @param middle middle of its capitals in pixels from the layout's top
 * @param size type size in pixels
 * @param spokenBefore spoken words of the script before its first word
 */
public record Row(int index, Face face, List<Piece> pieces, double middle, double size, int spokenBefore) {
    /** Copies the list and checks that there is something in it. */
    public Row {
        pieces = List.copyOf(pieces);
        if (pieces.isEmpty()) {
            throw new IllegalArgumentException("row " + index + " must have a word");
        }
    }

    /** Whether it is read aloud. */
    public boolean isRead() {
        return face == Face.READING;
    }

    /** The row's text, its words one space apart. */
    public String text() {
        return pieces.stream().map(Piece::text).collect(Collectors.joining(" "));
    }

    /** Its first word; only for a row that is read. */
    ReadingPosition first() {
        return new ReadingPosition(pieces.get(0).line(), pieces.get(0).word());
    }

    /** Spoken words in it. */
    int spoken() {
        return pieces.stream().mapToInt(Piece::spoken).sum();
    }
}
