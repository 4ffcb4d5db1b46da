package org.bookholder.pace;

/** How the live pace compares with the target. */
public enum PaceBand {
    /** Too little read to tell. */
    UNKNOWN("unknown"),
    /** Slower than the target by more than the tolerance. */
    SLOW("slow"),
    /** Within the tolerance of the target. */
    ON_PACE("on pace"),
    /** Faster than the target by more than the tolerance. */
    FAST("fast");

    /**
     * Hysteresis: a band is left only when the pace has returned by this fraction of the tolerance, so that the cue
     * does not flicker.
     */
    private static final double COME_BACK = 0.3;

    private final String label;

    PaceBand(String label) {
        this.label = label;
    }

    /** The word for it on screen and in every file. */
    public String label() {
        return label;
    }

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
