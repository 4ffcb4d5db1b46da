package org.bookholder.cutlist;

import org.bookholder.timing.StreamTime;

/**
 * How a lesson is cut.
 *
 * @param lead silence that a clip keeps before its first word, as far as there is any
 * @param tail silence that it keeps after its last word, likewise
 * @param longestPause a longer pause between two lines is cut
 * @param useMisread whether a line without a clean attempt is filled with its last complete one instead of a gap
 */
public record CutRules(StreamTime lead, StreamTime tail, StreamTime longestPause, boolean useMisread) {
    /**
     * The defaults: 0.08 s on each side (two frames at 25 per second), pauses of up to two seconds kept, clean attempts
     * only.
     */
    public static CutRules defaults() {
        return new CutRules(StreamTime.ofSeconds(0.08), StreamTime.ofSeconds(0.08), StreamTime.ofSeconds(2), false);
    }

    /** The same with or without misread lines. */
    public CutRules withMisread(boolean use) {
        return new CutRules(lead, tail, longestPause, use);
    }
}
