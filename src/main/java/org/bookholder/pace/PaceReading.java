package org.bookholder.pace;

import org.bookholder.timing.StreamTime;

/**
 * How fast the lesson is read. Rates are in spoken words per minute; NaN while there is too little to tell.
 *
 * @param live over the last 20 s, pauses included, holds and asides excluded
 * @param lesson over the lesson so far, likewise
 * @param articulation over the lesson so far with pauses of 250 ms and more left out
 * @param projected running time of the whole lesson, at what has been read so far and the rest as in {@code left}
 * @param left time for the words that are left, at a blend of target and measured pace
 * @param band where the live pace lies against the target; wavers less than the pace does
 * @param figure the live pace as a steady figure for show
 */
public record PaceReading(
        double live,
        double lesson,
        double articulation,
        StreamTime projected,
        StreamTime left,
        PaceBand band,
        double figure) {
    /** A reading with no band and the live pace itself as the figure. */
    public PaceReading(double live, double lesson, double articulation, StreamTime projected, StreamTime left) {
        this(live, lesson, articulation, projected, left, PaceBand.UNKNOWN, live);
    }
}
