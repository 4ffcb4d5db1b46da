package org.bookholder.pace;

import org.bookholder.timing.StreamTime;

/**
 * How pace is measured and shown.
 *
 * @param window the length of time over which the live pace is measured
 * @param pause the shortest silence that the articulation rate leaves out; 250 ms is the usual lower limit (the
 *     literature uses 100 to 1000 ms: De Jong and Bosker 2013)
 * @param fewest fewest words for which a rate is given, 1 or more
 * @param prior weight of the target pace, in words, in the blend with the measured pace, 1 or more. Readers differ by a fifth from
 *     each other, a hundred words of one by a twelfth from the rest: so a target says as much as some sixteen words
 * @param tolerance how far the live pace may differ from the target and still be on pace, as a fraction of the target,
 *     above 0 and below 1
 * @param step rounding of the displayed pace in words per minute, above 0
 */
public record PaceRules(StreamTime window, StreamTime pause, int fewest, int prior, double tolerance, double step) {
    /** Checks the ranges. */
    public PaceRules {
        if (window.ticks() == 0) {
            throw new IllegalArgumentException("window (" + window + ") must be positive");
        }
        if (fewest < 1 || prior < 1) {
            throw new IllegalArgumentException("fewest (" + fewest + ") and prior (" + prior + ") must be 1 or more");
        }
        if (!(tolerance > 0 && tolerance < 1)) {
            throw new IllegalArgumentException("tolerance (" + tolerance + ") must lie between 0 and 1");
        }
        if (!(step > 0)) {
            throw new IllegalArgumentException("step (" + step + ") must be positive");
        }
    }

    /** The defaults: 20 s, 250 ms, 8 words, 16 words, a tenth, 5 words per minute. */
    public static PaceRules defaults() {
        return new PaceRules(StreamTime.ofSeconds(20), StreamTime.ofSeconds(0.25), 8, 16, 0.1, 5);
    }
}
