package org.bookholder.view.gl;

import java.util.List;
import org.bookholder.view.Frame;
import org.bookholder.view.cue.Opening;
import org.bookholder.view.cue.Palette;
import org.bookholder.view.layout.Face;
import org.bookholder.view.layout.Geometry;

/** Draws title, length and sound above the first row of the lesson and what is shown before it, as many as there is room for. */
final class OpeningPainter {
    /** Distance of rows, in multiples of their size. */
    private static final double ROW = 1.4;

    /** Distance from the upper edge of the row below to the lowest row, in multiples of its size. */
    private static final double CLEAR = 0.75;

    private static final double TITLE = 1.2;
    private static final double BAR = 3.2;

    private final Shapes shapes;
    private final LabelPainter labels;
    private final Paragraph length;

    OpeningPainter(Shapes shapes, LabelPainter labels) {
        this.shapes = shapes;
        this.labels = labels;
        length = new Paragraph(labels);
    }

    /** Draws the opening; where it is as high as the head, to the right of {@code headEnd}. */
    void paint(Frame view, double light, double headEnd) {
        if (light <= 0) {
            return;
        }
        Opening opening = view.opening();
        Geometry geometry = view.geometry();
        double small = geometry.small();
        double y = geometry.eyeLine() - view.shownBefore() - 0.5 * geometry.pitch() - CLEAR * small;
        double x = left(y, geometry, headEnd);
        double beside = x + labels.length(opening.length(), Face.FIGURE, small) + 2 * small;
        if (beside + soundLength(opening, small) <= geometry.fieldRight()) {
            sound(opening, beside, y, small, light);
        } else if (!opening.sound().isEmpty() && fits(y - ROW * small, geometry)) {
            sound(opening, x, y, small, light);
            y -= ROW * small;
        }
        List<String> rows = length.rows(opening.length(), small, geometry.fieldRight() - x);
        for (int i = rows.size() - 1; i >= 0 && fits(y, geometry); i--) {
            x = left(y, geometry, headEnd);
            labels.left(rows.get(i), Face.FIGURE, small, x, y, Palette.FIGURE, light);
            y -= ROW * small;
        }
        if (fits(y, geometry)) {
            x = left(y, geometry, headEnd);
            String title = labels.fitted(opening.title(), Face.READING, TITLE * small, geometry.fieldRight() - x);
            labels.left(title, Face.READING, TITLE * small, x, y, Palette.LEAD_IN, light);
        }
    }

    /** Whether a row is inside the picture. */
    private static boolean fits(double y, Geometry geometry) {
        return y >= 0.7 * geometry.small();
    }

    private static double left(double y, Geometry geometry, double headEnd) {
        boolean high = y < geometry.headBottom() + 0.5 * geometry.small();
        return high ? Math.max(geometry.columnLeft(), headEnd + geometry.small()) : geometry.columnLeft();
    }

    private double soundLength(Opening opening, double small) {
        return opening.sound().isEmpty() ? 0 : (BAR + 0.6) * small + labels.length(opening.sound(), Face.FIGURE, small);
    }

    private void sound(Opening opening, double left, double y, double small, double light) {
        if (opening.sound().isEmpty()) {
            return;
        }
        double thick = Math.max(3, 0.24 * small);
        double length = BAR * small;
        shapes.bar(left, left + length, y, thick, Palette.HAIRLINE, light);
        shapes.bar(left, left + Math.max(thick, opening.level() * length), y, thick, Palette.LEAD_IN, light);
        labels.left(opening.sound(), Face.FIGURE, small, left + length + 0.6 * small, y, Palette.FIGURE, light);
    }
}
