package org.bookholder.view.layout;

import java.util.List;
import org.bookholder.follow.model.ReadingPosition;

/**
 * A script in rows. Converts between places in the script and heights in the layout. Heights are in pixels from the
 * layout's top; finding a row takes time logarithmic in the number of rows.
 */
public final class Layout {
    private static final double STRIDE_WORDS = 1.5;
    private static final double CLOSE_ROWS = 1.2;

    /** Slightly less than 1, because rows then stay closer to the eye-line when words are recognised a little late. */
    private static final double REACH = 0.84;

    /** The same for the first row after a gap: smaller, so that the row does not have to come from far away. */
    private static final double OPENING_REACH = 0.3;

    /** Average length of a written word, and what each word takes beside its letters, in letters. */
    private static final double AVERAGE_LETTERS = 4.7;

    private static final double WORD_LETTERS = 2;

    private static final double MOST_STRIDE_ROWS = 0.34;

    private final List<Row> rows;
    private final List<Row> read;
    private final int spoken;
    private final double pitch;

    /** Made by {@link Typesetter}. */
    Layout(List<Row> rows, int spoken, double pitch) {
        this.rows = List.copyOf(rows);
        this.read = this.rows.stream().filter(Row::isRead).toList();
        this.spoken = spoken;
        this.pitch = pitch;
    }

    /** All rows from top to bottom. */
    public List<Row> rows() {
        return rows;
    }

    /** The rows that are read aloud. */
    public List<Row> readRows() {
        return read;
    }

    /** Distance between rows in pixels. */
    public double pitch() {
        return pitch;
    }

    /** Number of spoken words in the script. */
    public int spoken() {
        return spoken;
    }

    /** Index in {@link #readRows()} of the row that holds a position; past the end, the last row. */
    public int readRowOf(ReadingPosition position) {
        int low = 0;
        int high = read.size() - 1;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (read.get(middle).first().compareTo(position) <= 0) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        while (low > 0
                && read.get(low - 1).first().equals(position)
                && read.get(low).first().equals(position)) {
            low--;
        }
        return Math.max(0, low);
    }

    /** Index in {@link #readRows()} of the row nearest to a height. */
    public int readRowAt(double height) {
        int low = 0;
        int high = read.size() - 1;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if ((read.get(middle).middle() + read.get(middle + 1).middle()) / 2 < height) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return Math.max(0, low);
    }

    /** Index in {@link #rows()} of the first row that reaches below a height. */
    public int rowBelow(double height) {
        int low = 0;
        int high = rows.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (rows.get(middle).middle() + pitch < height) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** Number of spoken words before a position. */
    public int spokenBefore(ReadingPosition position) {
        if (read.isEmpty()) {
            return 0;
        }
        Row row = read.get(readRowOf(position));
        int before = row.spokenBefore();
        for (int i = 0; i < row.pieces().size() && row.pieces().get(i).isBefore(position); i++) {
            before += row.pieces().get(i).spoken();
        }
        return before;
    }

    /** Number of written words of the script before a position. */
    public int wordsBefore(ReadingPosition position) {
        if (read.isEmpty()) {
            return 0;
        }
        Row row = read.get(readRowOf(position));
        for (int i = 0; i < row.pieces().size(); i++) {
            if (!row.pieces().get(i).isBefore(position)) {
                return row.pieces().get(i).ordinal();
            }
        }
        return row.pieces().get(row.pieces().size() - 1).ordinal() + 1;
    }

    /** Index, from 0, of the first word of the script below a row; one past the last word at the end. */
    public int wordAfter(Row row) {
        for (int i = row.index() + 1; i < rows.size(); i++) {
            if (rows.get(i).isRead()) {
                return rows.get(i).pieces().get(0).ordinal();
            }
        }
        return Integer.MAX_VALUE;
    }

    /** The word that follows {@code words} spoken words; the last one at the end. */
    public ReadingPosition positionAt(double words) {
        Row row = rowAtSpoken(words);
        double before = row.spokenBefore();
        ReadingPosition found = row.first();
        for (Piece piece : row.pieces()) {
            if (before > words + 1e-9) {
                break;
            }
            found = new ReadingPosition(piece.line(), piece.word());
            before += piece.spoken();
        }
        return found;
    }

    /** The height to place at the eye-line while the word at {@code position} is being read. */
    public double aim(ReadingPosition position) {
        return aimAtSpoken(spokenBefore(position) + 0.5);
    }

    /**
     * The height to place at the eye-line when {@code words} spoken words have been read; a fraction is a part of a
     * word. In the middle of each word it lies within half a row of that word's row. It grows evenly from word to word,
     * so that the text glides instead of stepping at each row. Only at a gap between rows (a new paragraph or a
     * direction) does it jump, and the first row after the gap is then brought a little closer to the eye-line.
     */
    public double aimAtSpoken(double words) {
        if (read.isEmpty()) {
            return 0;
        }
        Row row = rowAtSpoken(words);
        int number = readRowOf(row.first());
        double in = words - row.spokenBefore();
        double end = row.spoken() - 0.5;
        boolean opens = number > 0 && parted(read.get(number - 1), row);
        double first = row.middle() - (number == 0 ? 0 : opens ? OPENING_REACH * reach(row) : reach(row));
        double last = row.middle() + (number == read.size() - 1 ? 0 : reach(row));
        if (in < 0.5) {
            Row before = read.get(Math.max(0, number - 1));
            return mix(parted(before, row) ? first : before.middle() + reach(before), first, in + 0.5);
        }
        if (in > end) {
            Row after = read.get(Math.min(read.size() - 1, number + 1));
            return mix(last, parted(row, after) ? last : after.middle() - reach(after), in - end);
        }
        double along = row.spoken() < 2 ? 0.5 : (in - 0.5) / (end - 0.5);
        if (!opens) {
            return mix(first, last, along);
        }
        return along < 0.5 ? mix(first, row.middle(), 2 * along) : mix(row.middle(), last, 2 * along - 1);
    }

    /**
     * The same when the voice is estimated to be at {@code words} but only {@code heard} words are certain: the height
     * does not cross a gap between rows until the last word above it is likely to have been said.
     *
     * @param saidSince words of average length that are likely to have been said after those that are certain
     */
    public double aimAtSpoken(double words, int heard, double saidSince) {
        if (read.isEmpty() || words <= heard) {
            return aimAtSpoken(words);
        }
        Row sure = rowAtSpoken(heard);
        int number = readRowOf(sure.first());
        Row after = read.get(Math.min(read.size() - 1, number + 1));
        if (!parted(sure, after)) {
            return aimAtSpoken(words);
        }
        double edge = sure.spokenBefore() + sure.spoken();
        boolean said = heard >= edge - 1 && saidSince >= lastWord(sure);
        return aimAtSpoken(said ? Math.max(words, edge) : Math.min(words, edge - 0.5));
    }

    /** Length of a row's last word before a gap, in words of average length. */
    private static double lastWord(Row row) {
        Piece last = row.pieces().get(row.pieces().size() - 1);
        double letters = last.spoken() > 1 ? AVERAGE_LETTERS : last.text().length();
        return (letters + WORD_LETTERS) / (AVERAGE_LETTERS + WORD_LETTERS);
    }

    /** How far that height moves with each spoken word, near the place where {@code words} have been read. */
    public double stride(double words) {
        double stride = (aimAtSpoken(words + STRIDE_WORDS) - aimAtSpoken(words - STRIDE_WORDS)) / (2 * STRIDE_WORDS);
        return Math.min(stride, MOST_STRIDE_ROWS * pitch);
    }

    /** Distance from a row's middle to the height for its first or last word. */
    private double reach(Row row) {
        return row.spoken() < 2 ? 0 : REACH * (0.5 - 0.5 / row.spoken()) * pitch;
    }

    /** Whether there is a gap between two different rows. */
    private boolean parted(Row row, Row after) {
        return row.index() == after.index() || after.middle() - row.middle() > CLOSE_ROWS * pitch;
    }

    private static double mix(double from, double to, double share) {
        return from + Math.max(0, Math.min(1, share)) * (to - from);
    }

    private Row rowAtSpoken(double words) {
        int low = 0;
        int high = read.size() - 1;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (read.get(middle).spokenBefore() <= words) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return read.get(low);
    }
}
