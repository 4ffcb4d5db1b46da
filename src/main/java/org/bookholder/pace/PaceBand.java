package org.bookholder.pace;

/** How the live pace compares with the target. */
public enum PaceBand {
    /** Too little read to tell. */
    UNKNOWN,
    /** Slower than the target by more than the tolerance. */
    SLOW,
    /** Within the tolerance of the target. */
    ON_PACE,
    /** Faster than the target by more than the tolerance. */
    FAST;

    /**
     * Hysteresis: a band is left only when the pace has returned by this fraction of the tolerance, so that the cue
     * does not flicker.
     */
    private static final double COME_BACK = 0.3;

    /**
     * The next band after this one.
     *
     * @param live words per minute, NaN if unknown
     * @param target words per minute
     * @param tolerance allowed deviation as a fraction of the target
     */
    public PaceBand next(double live, double target, double tolerance) {
        if (Double.isNaN(live)) {
            return UNKNOWN;
        }
        double off = live / target - 1;
        double slow = this == SLOW ? tolerance * (1 - COME_BACK) : tolerance;
        double fast = this == FAST ? tolerance * (1 - COME_BACK) : tolerance;
        if (off < -slow) {
            return SLOW;
        }
        return off > fast ? FAST : ON_PACE;
    }
}
