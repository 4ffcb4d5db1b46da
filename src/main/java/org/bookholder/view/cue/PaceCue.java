package org.bookholder.view.cue;

import org.bookholder.pace.PaceBand;

/**
 * The pace as the reed shows it: a blade that is level when the reading is on pace, leans up when it is fast and down
 * when it is slow. The blade moves slowly and the figure changes seldom, so that neither distracts. Mutable. Confined
 * to one thread.
 */
public final class PaceCue {
    /** Deviation from the target, as a fraction of it, at which the blade leans as far as it can. */
    public static final double FULL_LEAN = 0.3;

    private static final double TOLERANCE = 0.10;
    private static final double SETTLING_SECONDS = 0.9;
    private static final double FIGURE_SECONDS = 2;
    private static final int FIGURE_STEP = 3;

    private PaceBand band = PaceBand.UNKNOWN;
    private double lean;
    private int figure;
    private String text = "";
    private double sinceFigure;

    /** Whether the reading is on pace, fast or slow. */
    PaceBand band() {
        return band;
    }

    /** Position of the blade, -1 (slow by {@value #FULL_LEAN} of the target or more) to 1 (fast by as much). */
    public double lean() {
        return lean;
    }

    /** Words per minute to show; 0 if not known yet. */
    int figure() {
        return figure;
    }

    /** The same as text; empty if not known yet. */
    public String text() {
        return text;
    }

    /**
     * Advances by {@code seconds}.
     *
     * @param live current words per minute, NaN while there is too little to measure
     * @param target target words per minute
     */
    public void advance(double live, double target, double seconds) {
        double share = 1 - Math.exp(-seconds / SETTLING_SECONDS);
        sinceFigure += seconds;
        if (Double.isNaN(live)) {
            band = PaceBand.UNKNOWN;
            lean *= 1 - share;
            figure = 0;
            text = "";
            return;
        }
        double wanted = Math.max(-1, Math.min(1, (live / target - 1) / FULL_LEAN));
        lean += (wanted - lean) * share;
        band = band.next(live, target, TOLERANCE);
        boolean stale = sinceFigure >= FIGURE_SECONDS && Math.abs(live - figure) >= FIGURE_STEP;
        if (figure == 0 || stale) {
            figure = (int) Math.round(live);
            text = Integer.toString(figure);
            sinceFigure = 0;
        }
    }
}
