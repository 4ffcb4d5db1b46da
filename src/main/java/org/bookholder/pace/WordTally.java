package org.bookholder.pace;

import org.bookholder.timing.StreamTime;

/**
 * Words and the time they took. Whole numbers, so that subtracting what was added restores the exact value.
 *
 * @param words spoken words
 * @param ticks time in ticks of {@link StreamTime}
 */
public record WordTally(long words, long ticks) {
    /** Nothing read. */
    public static final WordTally NONE = new WordTally(0, 0);

    private static final double TICKS_PER_MINUTE = 60.0 * StreamTime.TICKS_PER_SECOND;

    /** Words read in {@code time}. */
    public static WordTally of(long words, StreamTime time) {
        return new WordTally(words, time.ticks());
    }

    /** The sum of both. */
    public WordTally plus(WordTally other) {
        return new WordTally(words + other.words, ticks + other.ticks);
    }

    /** This without {@code other}, which was added before. */
    public WordTally minus(WordTally other) {
        return new WordTally(words - other.words, ticks - other.ticks);
    }

    /** Words per minute; NaN if no time has passed. */
    public double perMinute() {
        return ticks <= 0 ? Double.NaN : words * TICKS_PER_MINUTE / ticks;
    }

    /** Words per minute, or NaN while there are fewer than {@code fewest} words. */
    double perMinute(int fewest) {
        return words < fewest ? Double.NaN : perMinute();
    }
}
