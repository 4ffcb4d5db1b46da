package org.bookholder.delivery;

import java.util.Arrays;
import java.util.Optional;
import org.bookholder.footage.Film;
import org.bookholder.timing.StreamTime;

/**
 * When each part of the picture changed to and fro, and how much of the picture did so together. Confined to one thread.
 *
 * <p>A flash is a pair of opposing changes. Three flashes in a second are six of them; with the seventh, a fourth flash
 * has begun.
 */
final class FlashChanges {
    /** Opposing changes within a second that are more than three flashes. */
    static final int TOO_MANY = 7;

    /** Opposing changes within a second that are two flashes. */
    static final int TWO_FLASHES = 4;

    /** Where more than this share of a field flashes together, its flashes count (WCAG 2.2). */
    private static final double SHARE = 0.25;

    /**
     * Fields of a third of the picture's width and height: 341 by 256 pixels of 1024 by 768, the estimate of WCAG 2.2 for
     * 10 degrees of what a viewer sees.
     */
    private static final int FIELD_COLUMNS = Film.Viewer.COLUMNS / 3;

    private static final int FIELD_ROWS = Film.Viewer.ROWS / 3;

    private static final long SECOND = StreamTime.TICKS_PER_SECOND;

    /** Parts that change the same way in less than this time change together: one picture at 30 a second, two at 60. */
    private static final long TOGETHER = SECOND / 30;

    private static final long NEVER = Long.MIN_VALUE / 2;
    private static final int PARTS = Film.Viewer.COLUMNS * Film.Viewer.ROWS;

    /** The last changes of each part, the newest first. */
    private final long[] times = new long[PARTS * TOO_MANY];

    private final byte[] directions = new byte[PARTS];
    private final int[] sums = new int[(Film.Viewer.COLUMNS + 1) * (Film.Viewer.ROWS + 1)];
    private long lastChange = NEVER;

    /** The earliest change that counts, of those that are being looked at. */
    private long earliest;

    FlashChanges() {
        Arrays.fill(times, NEVER);
    }

    /** The way in which a part changed last: 1, -1, or 0 if it has not changed yet. */
    int direction(int part) {
        return directions[part];
    }

    /** A part has changed in this direction, opposite to the change before. */
    void add(int part, int direction, StreamTime at) {
        int newest = part * TOO_MANY;
        System.arraycopy(times, newest, times, newest + 1, TOO_MANY - 1);
        times[newest] = at.ticks();
        directions[part] = (byte) direction;
        lastChange = at.ticks();
    }

    /**
     * Finds out whether in some field more than the allowed share has just changed together, each for the {@code least}-th time in a
     * second.
     *
     * @return when these changes began; empty if it has not
     */
    Optional<StreamTime> flashing(StreamTime now, int least) {
        earliest = now.ticks();
        boolean flashing = now.ticks() == lastChange && (flashing(now, least, 1) || flashing(now, least, -1));
        return flashing ? Optional.of(new StreamTime(earliest)) : Optional.empty();
    }

    private boolean flashing(StreamTime now, int least, int direction) {
        int width = Film.Viewer.COLUMNS + 1;
        for (int row = 0; row < Film.Viewer.ROWS; row++) {
            int inRow = 0;
            for (int column = 0; column < Film.Viewer.COLUMNS; column++) {
                int part = row * Film.Viewer.COLUMNS + column;
                if (counts(part, now, least, direction)) {
                    inRow++;
                    earliest = Math.min(earliest, times[part * TOO_MANY + least - 1]);
                }
                sums[(row + 1) * width + column + 1] = sums[row * width + column + 1] + inRow;
            }
        }
        for (int row = FIELD_ROWS; row <= Film.Viewer.ROWS; row++) {
            for (int column = FIELD_COLUMNS; column <= Film.Viewer.COLUMNS; column++) {
                int above = (row - FIELD_ROWS) * width + column;
                int inField = sums[row * width + column]
                        - sums[above]
                        - sums[row * width + column - FIELD_COLUMNS]
                        + sums[above - FIELD_COLUMNS];
                if (inField > SHARE * FIELD_COLUMNS * FIELD_ROWS) {
                    return true;
                }
            }
        }
        return false;
    }

    private boolean counts(int part, StreamTime now, int least, int direction) {
        int newest = part * TOO_MANY;
        return directions[part] == direction
                && now.ticks() - times[newest] < TOGETHER
                && now.ticks() - times[newest + least - 1] < SECOND;
    }
}
