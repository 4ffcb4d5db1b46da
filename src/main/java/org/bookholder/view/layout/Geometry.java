package org.bookholder.view.layout;

import org.bookholder.view.settings.TypeSize;
import org.bookholder.view.settings.WindowSettings;

/**
 * Positions and sizes of everything in a picture of a certain size. All lengths in pixels, y downwards from the top.
 *
 * @param width width of the picture
 * @param height height of the picture
 * @param em type size of the script
 * @param pitch distance between rows
 * @param columnLeft left edge of the rows
 * @param columnWidth greatest length of a row
 * @param eyeLine middle of the row being read; low enough that the row does not touch the figures at the top
 * @param small type size of the figures around the text and of the advice: legible from where the script is read
 * @param said type size of messages to the presenter, which are read from the same distance as the script
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

    /** Screens of unknown size are assumed to measure 24 inches. */
    static final double USUAL_SCREEN_HEIGHT = 300;

    /** Average width of a word and its space in ems, measured over running English text in Inter SemiBold. */
    private static final double WORD_EMS = 2.65;

    /** Distance from the middle of the figures at the top to below them, in units of their type size. */
    private static final double HEAD_SMALL = 0.8;

    /**
     * Least distance from below the figures at the top to the middle of the row being read, in rows; half a row of it
     * is the row itself.
     */
    private static final double LEAST_CLEAR = 0.65;

    private static final double HALF_ROW = 0.55;

    /** Messages are at least this large beside the script. */
    private static final double SAID_EMS = 0.6;

    /** How far from the column figures may stand: on a wide screen they stay where the eyes are. */
    private static final double FIELD_EMS = 4.3;

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
        double capitals = TypeSize.capitalHeight(settings.distance(), TypeSize.PREFERRED_ARC_MINUTES);
        double legible = TypeSize.em(capitals, screen, screenPixels);
        double small = Math.max(10, Math.min(em, legible));
        double said = Math.min(em, Math.max(SAID_EMS * em, legible));
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

    /** Bottom of the area for the figures at the top; rows have faded out there. */
    public double headBottom() {
        return margin + HEAD_SMALL * small;
    }

    /** Height above which rows begin to fade out; always above the row being read. */
    public double headClear() {
        return Math.min(headBottom() + 1.15 * em, eyeLine - HALF_ROW * pitch);
    }

    /** Top of the area for the figures at the bottom; rows have faded out above it. */
    public double footTop() {
        return footLine() - 1.6 * small;
    }

    /** Height of the lesson's progress line, below the figures at the bottom, which stand clear of its pickups. */
    public double threadLine() {
        return height - 0.4 * margin;
    }

    /** Middle of the figures at the bottom. */
    public double footLine() {
        return threadLine() - 1.15 * small;
    }

    /** Middle of the figures at the top. */
    public double headLine() {
        return margin;
    }

    /** Left edge of the figures: near the text, inside the picture. */
    public double fieldLeft() {
        return Math.max(edge(), columnLeft - FIELD_EMS * em);
    }

    /** Right edge of the figures, likewise. */
    public double fieldRight() {
        return Math.min(width - edge(), columnRight() + FIELD_EMS * em);
    }

    private double edge() {
        return Math.min(1.4 * margin, 0.04 * width);
    }

    /** Right edge of the rows. */
    public double columnRight() {
        return columnLeft + columnWidth;
    }
}
