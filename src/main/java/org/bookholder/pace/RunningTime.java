package org.bookholder.pace;

import org.bookholder.timing.StreamTime;

/** Words to time: how long a script runs. */
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
     * A pace to foretell with: that of the words read so far and {@code prior} more words at the target pace. At first
     * it is the target; as words come in it moves to what is measured, in harmonic mean, so that times add up.
     *
     * @param read words read so far and their time
     * @param target words per minute
     * @param prior how many words the target counts for, 1 or more
     */
    public static double blend(WordTally read, double target, int prior) {
        return read.plus(WordTally.of(prior, of(prior, target))).perMinute();
    }
}
