package org.bookholder.timing;

import java.time.Duration;

/**
 * A time in a session's audio, or a duration, in ticks of 1/48,000 s. Times count from the session's first sample.
 *
 * <p>It never comes from a clock: a time is the number of samples before it. Rates of 8, 16, 24 and 48 kHz are exact;
 * other rates are rounded once, from the total sample count, so errors do not accumulate.
 *
 * @param ticks count of ticks, 0 or more
 */
public record StreamTime(long ticks) implements Comparable<StreamTime> {
    /** Ticks in one second. */
    public static final int TICKS_PER_SECOND = 48_000;

    private static final long NANOS_PER_SECOND = 1_000_000_000;

    /** The first sample of the session. */
    public static final StreamTime ZERO = new StreamTime(0);

    /** Checks the range. */
    public StreamTime {
        if (ticks < 0) {
            throw new IllegalArgumentException("ticks (" + ticks + ") must not be negative");
        }
    }

    /** The time after {@code samples} samples at {@code rate} per second. */
    public static StreamTime ofSamples(long samples, int rate) {
        if (rate <= 0) {
            throw new IllegalArgumentException("rate (" + rate + ") must be positive");
        }
        return new StreamTime(
                Math.floorDiv(Math.addExact(Math.multiplyExact(samples, TICKS_PER_SECOND), rate / 2), rate));
    }

    /** The tick nearest to {@code seconds}; negative values become zero. */
    public static StreamTime ofSeconds(double seconds) {
        return new StreamTime(Math.max(0, Math.round(seconds * TICKS_PER_SECOND)));
    }

    /** This time in seconds, for display and output; arithmetic stays in ticks. */
    public double seconds() {
        return (double) ticks / TICKS_PER_SECOND;
    }

    /** This time as a duration, rounded down to a nanosecond. */
    public Duration toDuration() {
        return Duration.ofSeconds(
                ticks / TICKS_PER_SECOND, ticks % TICKS_PER_SECOND * NANOS_PER_SECOND / TICKS_PER_SECOND);
    }

    /** The count of samples at {@code rate} per second that lie before this time, rounded to the nearest. */
    public long samples(int rate) {
        return Math.floorDiv(Math.multiplyExact(ticks, rate) + TICKS_PER_SECOND / 2, TICKS_PER_SECOND);
    }

    /** This time plus {@code length}. */
    public StreamTime plus(StreamTime length) {
        return new StreamTime(Math.addExact(ticks, length.ticks));
    }

    /** The length from {@code earlier} to this time; zero if this is the earlier of the two. */
    public StreamTime since(StreamTime earlier) {
        return new StreamTime(Math.max(0, ticks - earlier.ticks));
    }

    /** Whether this time lies before {@code other}. */
    public boolean isBefore(StreamTime other) {
        return ticks < other.ticks;
    }

    /** The earlier of two times. */
    public static StreamTime min(StreamTime a, StreamTime b) {
        return a.isBefore(b) ? a : b;
    }

    /** The later of two times. */
    public static StreamTime max(StreamTime a, StreamTime b) {
        return a.isBefore(b) ? b : a;
    }

    @Override
    public int compareTo(StreamTime other) {
        return Long.compare(ticks, other.ticks);
    }
}
