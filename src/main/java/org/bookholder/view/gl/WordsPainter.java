package org.bookholder.view.gl;

import java.util.List;
import org.bookholder.view.Frame;
import org.bookholder.view.Frame.Caption;
import org.bookholder.view.Frame.Spot;
import org.bookholder.view.layout.Face;
import org.bookholder.view.layout.Geometry;
import org.jspecify.annotations.Nullable;

/**
 * Draws the words below the right footlight and above the thread, and the countdown number. Words that have too little
 * room beside the text, in the head or in the foot are drawn above the thread.
 */
final class WordsPainter {
    private static final double ROW = 1.25;

    /** Distance from the middle of the numbers at the bottom to just above them, in multiples of their size. */
    private static final double FIGURES = 0.65;

    /** Distance from there to the middle of the lowest row above them, in multiples of that row's size. */
    private static final double LOWEST = 0.7;

    /**
     * Distance from the middle of the highest row to the height at which the script has faded out, in multiples of that
     * row's size.
     */
    private static final double CLEAR = 1.05;

    private final LabelPainter labels;
    private final Paragraph besides;
    private final Paragraph message;
    private final Paragraph displacedStanding;
    private final Paragraph displacedSound;
    private final Paragraph displacedRest;
    private final CaptionRoom room;

    WordsPainter(LabelPainter labels, CaptionRoom room) {
        this.labels = labels;
        this.room = room;
        besides = new Paragraph(labels);
        message = new Paragraph(labels);
        displacedStanding = new Paragraph(labels);
        displacedSound = new Paragraph(labels);
        displacedRest = new Paragraph(labels);
    }

    void paint(Frame view) {
        Geometry geometry = view.geometry();
        Caption count = view.caption(Spot.COUNT);
        if (count != null && isNumber(count)) {
            number(count, geometry);
        } else if (count != null && fits(count, 1.2 * geometry.small(), geometry)) {
            beside(count, 1.2 * geometry.small(), geometry);
        }
        Caption standing = view.caption(Spot.BESIDE);
        if (standing != null && fits(standing, geometry.small(), geometry)) {
            beside(standing, geometry.small(), geometry);
        }
        int line = above(displacedRest, rest(view), geometry, 0);
        line = above(displacedSound, sound(view), geometry, line);
        line = above(displacedStanding, standing(view), geometry, line);
        above(message, view.caption(Spot.MESSAGE), geometry, line);
    }

    /** How much higher the bottom area of the picture reaches because of the words above the thread, in pixels. */
    double height(Frame view) {
        Geometry geometry = view.geometry();
        Caption said = view.caption(Spot.MESSAGE);
        int standing = rows(displacedRest, rest(view), geometry)
                + rows(displacedSound, sound(view), geometry)
                + rows(displacedStanding, standing(view), geometry);
        double least = lift(standing, geometry);
        if (said == null) {
            return least;
        }
        return least + said.light() * (lift(standing + rows(message, said, geometry), geometry) - least);
    }

    private static double lift(int rows, Geometry geometry) {
        double usual = geometry.footLine() - geometry.footTop();
        return rows == 0 ? 0 : Math.max(0, middle(rows - 1, geometry) + CLEAR * geometry.said() - usual);
    }

    /** How far above the numbers at the bottom the middle of a row is; row 0 is the lowest. */
    private static double middle(int row, Geometry geometry) {
        return FIGURES * geometry.small() + (LOWEST + row * ROW) * geometry.said();
    }

    private static boolean isNumber(Caption count) {
        return count.text().length() <= 2;
    }

    private @Nullable Caption rest(Frame view) {
        return room.footFits(view) ? null : view.caption(Spot.FOOT_RIGHT);
    }

    private @Nullable Caption sound(Frame view) {
        return room.headFits(view) ? null : view.caption(Spot.HEAD_MIDDLE);
    }

    /** The caption that does not fit beside the text, if any. */
    private @Nullable Caption standing(Frame view) {
        Geometry geometry = view.geometry();
        Caption count = view.caption(Spot.COUNT);
        if (count != null && !isNumber(count) && !fits(count, 1.2 * geometry.small(), geometry)) {
            return count;
        }
        Caption standing = view.caption(Spot.BESIDE);
        return standing == null || fits(standing, geometry.small(), geometry) ? null : standing;
    }

    private static double besideLeft(Geometry geometry) {
        return geometry.columnRight() + 0.95 * geometry.em();
    }

    private static double besideRoom(Geometry geometry) {
        return geometry.width() - 0.5 * geometry.margin() - besideLeft(geometry);
    }

    /** Whether every row fits. */
    private boolean fits(Caption caption, double size, Geometry geometry) {
        double room = besideRoom(geometry);
        List<String> rows = besides.rows(caption.text(), size, room);
        for (int i = 0; i < rows.size(); i++) {
            if (labels.length(rows.get(i), Face.FIGURE, size) > room) {
                return false;
            }
        }
        return true;
    }

    /**
     * Draws the countdown number as large as the text, beside it or, if there is little room there, in the middle of
     * that room.
     */
    private void number(Caption caption, Geometry geometry) {
        double size = 1.2 * geometry.em();
        double right = geometry.columnRight();
        double middle = right + (geometry.width() - right - labels.length(caption.text(), Face.READING, size)) / 2;
        double x = Math.min(besideLeft(geometry), middle);
        double y = geometry.eyeLine() + 1.6 * geometry.em();
        labels.left(caption.text(), Face.READING, size, x, y, caption.rgb(), caption.light());
    }

    private void beside(Caption caption, double size, Geometry geometry) {
        Face face = caption.spot() == Spot.COUNT ? Face.READING : Face.FIGURE;
        double y = geometry.eyeLine() + 1.35 * geometry.small();
        List<String> rows = besides.rows(caption.text(), size, besideRoom(geometry));
        for (int i = 0; i < rows.size(); i++) {
            labels.left(rows.get(i), face, size, besideLeft(geometry), y, caption.rgb(), caption.light());
            y += 1.3 * size;
        }
    }

    private int rows(Paragraph place, @Nullable Caption caption, Geometry geometry) {
        return caption == null ? 0 : wrapped(place, caption, geometry).size();
    }

    private static List<String> wrapped(Paragraph place, Caption caption, Geometry geometry) {
        return place.rows(caption.text(), geometry.said(), 0.9 * geometry.width());
    }

    /** Draws rows above the thread, {@code lift} rows above the lowest; returns how many rows are now in use. */
    private int above(Paragraph place, @Nullable Caption caption, Geometry geometry, int lift) {
        if (caption == null) {
            return lift;
        }
        double size = geometry.said();
        List<String> rows = wrapped(place, caption, geometry);
        double y = geometry.footLine() - middle(lift + rows.size() - 1, geometry);
        for (int i = 0; i < rows.size(); i++) {
            labels.centred(rows.get(i), Face.FIGURE, size, geometry.width() / 2.0, y, caption.rgb(), caption.light());
            y += ROW * size;
        }
        return lift + rows.size();
    }
}
