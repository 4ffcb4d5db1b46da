package org.bookholder.fatigue;

import java.time.Duration;

/**
 * The clocks that are compared with the limits. A rest (a hold, or the time between takes) that is long enough is a
 * real break and resets the clocks that count since the last break; a shorter one is counted once it is over.
 *
 * @param reading reading time
 * @param onCamera time in takes, without holds
 * @param sinceBreak time since the last real break, without the current rest
 * @param readingSinceBreak reading time since the last real break
 * @param rest the current rest
 * @param rested whether there has been a real break
 */
public record FatigueClocks(
        Duration reading,
        Duration onCamera,
        Duration sinceBreak,
        Duration readingSinceBreak,
        Duration rest,
        boolean rested) {
    /** The clocks at the beginning of a day. */
    public static final FatigueClocks START =
            new FatigueClocks(Duration.ZERO, Duration.ZERO, Duration.ZERO, Duration.ZERO, Duration.ZERO, false);

    /** What the presenter is doing. */
    public enum Doing {
        /** Reading aloud; includes asides, because they strain the voice as well. */
        READING,
        /** On camera but not reading: before the first word and after the last. */
        STANDING_BY,
        /** Resting: the take is held, or no take is running. */
        RESTING
    }

    /** Adds time; {@code length} is not negative. */
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

    /** The clocks with the current rest counted as if it ended now. */
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
