package org.bookholder.pace;

import org.bookholder.timing.StreamTime;

/**
 * How fast the lesson is read. Rates are in spoken words per minute; NaN while too little has been read.
 *
 * @param live rate over the last 20 s, pauses included, holds and asides excluded
 * @param lesson rate over the lesson so far, likewise
 * @param articulation rate over the lesson so far, without pauses of 250 ms and more
 * @param projected running time of the whole lesson: time so far plus {@code left}
 * @param left time for the remaining words, at a blend of target and measured pace
 * @param band how the live pace compares with the target; changes less often than the pace
 * @param figure the live pace as a steady figure for display
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
