package org.bookholder.fatigue;

import java.time.Duration;

/**
 * The clocks that limits are held against. A rest (a hold, or the time between takes) counts only once it is over or
 * long enough: then it is a real break, and the clocks since the last break begin anew.
 *
 * @param reading reading time
 * @param onCamera time in takes, without holds
 * @param sinceBreak time since the last real break, without the rest that is going on
 * @param readingSinceBreak reading time since the last real break
 * @param rest the rest that is going on
 * @param rested whether there was a real break yet
 */
public record FatigueClocks(
        Duration reading,
        Duration onCamera,
        Duration sinceBreak,
        Duration readingSinceBreak,
        Duration rest,
        boolean rested) {
    /** The clocks at the session's start. */
    public static final FatigueClocks START =
            new FatigueClocks(Duration.ZERO, Duration.ZERO, Duration.ZERO, Duration.ZERO, Duration.ZERO, false);

    /** What the presenter is doing. */
    public enum Doing {
        /** Reading aloud; asides are in it, for they load the voice as well. */
        READING,
        /** On camera without reading: before the first word and after the last. */
        STANDING_BY,
        /** Resting: the take is held, or there is none. */
        RESTING
    }

    /** Time passed; {@code length} is not negative. */
    public FatigueClocks advance(Duration length, Doing doing, FatigueLimits limits) {
        if (length.isZero()) {
            return this;
        }
        if (doing == Doing.RESTING) {
            return new FatigueClocks(reading, onCamera, sinceBreak, readingSinceBreak, rest.plus(length), rested);
        }
        FatigueClocks start = rest.isZero() ? this : upToNow(limits);
        Duration read = doing == Doing.READING ? length : Duration.ZERO;
        return new FatigueClocks(
                start.reading.plus(read),
                start.onCamera.plus(length),
                start.sinceBreak.plus(length),
                start.readingSinceBreak.plus(read),
                Duration.ZERO,
                start.rested);
    }

    /** The clocks with the rest that is going on counted in, as if it were over now. */
    public FatigueClocks upToNow(FatigueLimits limits) {
        if (rest.compareTo(limits.recovery()) >= 0) {
            return START;
        }
        if (rest.compareTo(limits.realBreak()) >= 0) {
            return new FatigueClocks(reading, onCamera, Duration.ZERO, Duration.ZERO, Duration.ZERO, true);
        }
        return new FatigueClocks(reading, onCamera, sinceBreak.plus(rest), readingSinceBreak, Duration.ZERO, rested);
    }
}
