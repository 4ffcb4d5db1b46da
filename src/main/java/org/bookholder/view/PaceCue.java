package org.bookholder.view;

import org.bookholder.pace.PaceBand;

/**
 * What the reed shows of the pace: a blade that lies level on pace, leans up when the reading is fast and down when it
 * is slow. It moves slowly, and its figure changes only when there is something to say, so that it never draws the
 * eye.
 *
 * @param band which way the reading is off its pace
 * @param lean where the blade stands, -1 (slow by {@value #FULL_LEAN} of the target or more) to 1 (fast likewise)
 * @param figure words per minute to show, 0 for none yet
 * @param sinceFigure seconds since the figure changed
 */
public record PaceCue(PaceBand band, double lean, int figure, double sinceFigure) {
    /** Nothing measured yet. */
    public static final PaceCue NONE = new PaceCue(PaceBand.UNKNOWN, 0, 0, 0);

    /** Deviation from the target, as a share of it, at which the blade leans as far as it can. */
    static final double FULL_LEAN = 0.3;

    private static final double TOLERANCE = 0.10;
    private static final double SETTLING_SECONDS = 0.9;
    private static final double FIGURE_SECONDS = 2;
    private static final int FIGURE_STEP = 3;

    /**
     * The cue {@code seconds} later.
     *
     * @param live words per minute now, NaN while there is too little to tell
     * @param target words per minute wanted
     * @param seconds time that has passed
     */
    public PaceCue after(double live, double target, double seconds) {
        double share = 1 - Math.exp(-seconds / SETTLING_SECONDS);
        if (Double.isNaN(live)) {
            return new PaceCue(PaceBand.UNKNOWN, lean * (1 - share), 0, sinceFigure + seconds);
        }
        double off = live / target - 1;
        double wanted = Math.max(-1, Math.min(1, off / FULL_LEAN));
        boolean fresh = figure == 0;
        boolean stale = sinceFigure >= FIGURE_SECONDS && Math.abs(live - figure) >= FIGURE_STEP;
        int shown = fresh || stale ? (int) Math.round(live) : figure;
        double since = fresh || stale ? 0 : sinceFigure + seconds;
        return new PaceCue(band.next(live, target, TOLERANCE), lean + (wanted - lean) * share, shown, since);
    }
}
