package org.bookholder.view.layout;

import org.bookholder.view.settings.TypeSize;
import org.bookholder.view.settings.WindowSettings;

/**
 * Where things stand in a picture of a certain size. All lengths in pixels, y downwards from the top.
 *
 * @param width of the picture
 * @param height of the picture
 * @param em type size of the script
 * @param pitch distance from row to row
 * @param columnLeft where rows begin
 * @param columnWidth how long a row may be
 * @param eyeLine middle of the row being read; low enough that the row stands clear of the figures at the head
 * @param small type size of figures at the edges
 * @param said type size of what is said to the presenter, which is read from where the script is
 * @param margin distance of figures from the edges
 */
public record Geometry(
        int width,
        int height,
        double em,
        double pitch,
        double columnLeft,
        double columnWidth,
        double eyeLine,
        double small,
        double said,
        double margin) {
    /** WCAG 2.2, 1.4.8: line spacing is at least space and a half. */
    static final double PITCH_EMS = 1.5;

    /** Screens of unknown size are taken for one of 24 inches. */
    static final double USUAL_SCREEN_HEIGHT = 300;

    /** Ems of a word and its space, on average, measured over running English text in Inter SemiBold. */
    private static final double WORD_EMS = 2.65;

    /** From the middle of the figures at the head to below them, in their size. */
    private static final double HEAD_SMALL = 0.8;

    /** Rows from below the figures at the head to the middle of the row being read, at least; half of it is the row. */
    private static final double LEAST_CLEAR = 0.65;

    private static final double HALF_ROW = 0.55;

    /** What is said is smaller than the script, so that it is not taken for it; no smaller than can be read, if it may. */
    private static final double SAID_EMS = 0.6;

    private static final double MOST_SAID_EMS = 0.8;

    private static final double MOST_COLUMN = 0.7;
    private static final double MOST_EM = 0.16;

    /**
     * Lays out a picture.
     *
     * @param settings what the presenter wants
     * @param monitorHeight height of the monitor's picture in mm as it reports it, 0 if it does not
     * @param screenPixels height of the whole monitor in pixels, which the physical sizes refer to
     * @param width of the picture
     * @param height of the picture
     */
    public static Geometry of(WindowSettings settings, double monitorHeight, int screenPixels, int width, int height) {
        double screen = settings.screenHeight().orElse(monitorHeight > 0 ? monitorHeight : USUAL_SCREEN_HEIGHT);
        double capital = TypeSize.capitalHeight(settings.distance(), settings.arcMinutes());
        double wanted = settings.size().orElseGet(() -> TypeSize.em(capital, screen, screenPixels));
        double em = Math.max(8, Math.min(Math.min(wanted, MOST_EM * height), 0.08 * width));
        double column = Math.min(MOST_COLUMN * width, settings.columnWords() * WORD_EMS * em);
        double small = Math.max(10, Math.min(0.42 * em, Math.min(height / 32.0, width / 52.0)));
        double legible = TypeSize.capitalHeight(settings.distance(), TypeSize.LEAST_ARC_MINUTES);
        double said = Math.min(MOST_SAID_EMS * em, Math.max(SAID_EMS * em, TypeSize.em(legible, screen, screenPixels)));
        double margin = Math.rint(0.035 * height);
        return new Geometry(
                width,
                height,
                em,
                PITCH_EMS * em,
                Math.rint((width - column) / 2),
                column,
                Math.max(settings.eyeLine() * height, margin + HEAD_SMALL * small + LEAST_CLEAR * PITCH_EMS * em),
                small,
                said,
                margin);
    }

    /** Where the head of the picture ends: rows have faded out beneath its figures. */
    public double headBottom() {
        return margin + HEAD_SMALL * small;
    }

    /** Where rows begin to fade out towards the head; always above the row being read. */
    public double headClear() {
        return Math.min(headBottom() + 1.15 * em, eyeLine - HALF_ROW * pitch);
    }

    /** Where the foot of the picture begins: rows have faded out above it. */
    public double footTop() {
        return height - 2.4 * small - margin;
    }

    /** Height of the lesson's thread, beneath the figures at the foot. */
    public double threadLine() {
        return height - 0.4 * margin;
    }

    /** Middle of the figures at the foot. */
    public double footLine() {
        return height - margin;
    }

    /** Middle of the figures at the head. */
    public double headLine() {
        return margin;
    }

    /** Where rows end at the right. */
    public double columnRight() {
        return columnLeft + columnWidth;
    }
}
