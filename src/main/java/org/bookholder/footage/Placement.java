package org.bookholder.footage;

import org.bookholder.timing.StreamTime;

/**
 * Where one take lies in a file of footage.
 *
 * @param take take number, from 1
 * @param takeStart where the take begins on the session's audio
 * @param start where the take's first sample lies in the file, in ticks of {@link StreamTime}; negative if the camera was
 *     started late
 * @param drift by how many thousand-millionths the file's clock counts more than the session's; negative if less
 * @param from the first session time that lies in both
 * @param to the last one
 * @param confidence how sure it is, 0 to 1
 */
public record Placement(
        int take, StreamTime takeStart, long start, long drift, StreamTime from, StreamTime to, double confidence) {
    private static final long WHOLE = 1_000_000_000;

    /** Checks the range. */
    public Placement {
        if (Math.abs(drift) > WHOLE / 1000) {
            throw new IllegalArgumentException("drift (" + drift + ") must be within a thousandth");
        }
    }

    /** The place of a take in a file that begins and ends with it. */
    public static Placement whole(int take, StreamTime start, StreamTime end) {
        return new Placement(take, start, 0, 0, start, end, 1);
    }

    /** Where a session time lies in the file, in ticks; negative if before it begins. */
    public long inFile(StreamTime time) {
        long inTake = time.ticks() - takeStart.ticks();
        return start + inTake + Math.floorDiv(Math.addExact(Math.multiplyExact(inTake, drift), WHOLE / 2), WHOLE);
    }

    /** The same placement, no further than a file of that length has pictures; its sound may go on a little. */
    public Placement within(StreamTime length) {
        long inTake = Math.max(0, Math.multiplyExact(length.ticks() - start, WHOLE) / (WHOLE + drift));
        StreamTime end = StreamTime.max(from, StreamTime.min(to, takeStart.plus(new StreamTime(inTake))));
        return new Placement(take, takeStart, start, drift, from, end, confidence);
    }

    /** Where a session time lies in the file, both in ticks with fractions; also outside of what lies in both. */
    public double fileTicks(double session) {
        return start + (session - takeStart.ticks()) * speed();
    }

    /** The session time of a place in the file: the reverse of {@link #fileTicks}. */
    public double sessionTicks(double file) {
        return takeStart.ticks() + (file - start) / speed();
    }

    /** How many ticks the file's clock counts for each tick of the session's. */
    public double speed() {
        return 1 + (double) drift / WHOLE;
    }

    /** Whether a session time lies in the file. */
    public boolean covers(StreamTime time) {
        return !time.isBefore(from) && !to.isBefore(time);
    }

    /** Whether that moment of a take lies in the file, and something after it, too. */
    public boolean holds(int ofTake, StreamTime at) {
        return take == ofTake && !at.isBefore(from) && at.isBefore(to);
    }

    /** The drift in millionths, for display. */
    public double driftPpm() {
        return drift / 1000.0;
    }
}
