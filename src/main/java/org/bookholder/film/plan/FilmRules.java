package org.bookholder.film.plan;

import org.bookholder.cutlist.CutRules;
import org.bookholder.cutlist.PunchIn;
import org.bookholder.timing.StreamTime;

/**
 * How a film is cut.
 *
 * @param cut which attempts are used, and how much quiet stays around them
 * @param step how much closer the closer framing is, in per cent of the picture as shot
 */
public record FilmRules(CutRules cut, int step) {
    /** Our choice: a step of 1.12 looks like another shot and loses little of the frame. */
    private static final int STEP = 112;

    /**
     * The defaults: pauses stay as they were read up to 0.8 s. A longer one is cut down to 0.4 s before the line, which
     * keeps its breath, and 0.25 s after the one before it. Misread lines are used, and marked.
     */
    public static FilmRules defaults() {
        return new FilmRules(
                new CutRules(StreamTime.ofSeconds(0.4), StreamTime.ofSeconds(0.25), StreamTime.ofSeconds(0.8), true),
                STEP);
    }

    /** The same with one framing throughout. */
    public FilmRules asShot() {
        return new FilmRules(cut, PunchIn.FULL);
    }
}
