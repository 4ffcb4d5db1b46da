package org.bookholder.view.cue;

import org.bookholder.pace.PaceBand;

/**
 * What the reed shows of the pace: a blade that lies level on pace, leans up when the reading is fast and down when it
 * is slow. It moves slowly, and its figure changes only when there is something to say, so that it never draws the
 * eye. Changed in place. Confined to one thread.
 */
public final class PaceCue {
    /** Deviation from the target, as a share of it, at which the blade leans as far as it can. */
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

    /** Which way the reading is off its pace. */
    PaceBand band() {
        return band;
    }

    /** Where the blade stands, -1 (slow by {@value #FULL_LEAN} of the target or more) to 1 (fast likewise). */
    public double lean() {
        return lean;
    }

    /** Words per minute to show, 0 for none yet. */
    int figure() {
        return figure;
    }

    /** The same as text, empty for none yet. */
    public String text() {
        return text;
    }

    /**
     * Goes on for {@code seconds}.
     *
     * @param live words per minute now, NaN while there is too little to tell
     * @param target words per minute wanted
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
