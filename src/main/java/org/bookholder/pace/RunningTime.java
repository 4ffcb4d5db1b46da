package org.bookholder.pace;

import org.bookholder.timing.StreamTime;

/** Converts words to running time. */
public final class RunningTime {
    private static final double SECONDS_PER_MINUTE = 60;

    private RunningTime() {}

    /**
     * The running time of {@code words} spoken words.
     *
     * @param words 0 or more
     * @param pace words per minute, above 0
     */
    public static StreamTime of(long words, double pace) {
        if (words < 0 || !(pace > 0)) {
            throw new IllegalArgumentException("words (" + words + ") must be 0 or more, pace (" + pace + ") above 0");
        }
        return StreamTime.ofSeconds(words * SECONDS_PER_MINUTE / pace);
    }

    /**
     * The pace for predictions: that of the words read so far plus {@code prior} words at the target pace. It starts at
     * the target and approaches the measured pace as words are read. The mean is harmonic, so that times add up.
     *
     * @param read words read so far and their time
     * @param target target words per minute
     * @param prior weight of the target in words, 1 or more
     */
    public static double blend(WordTally read, double target, int prior) {
        return read.plus(WordTally.of(prior, of(prior, target))).perMinute();
    }
}
