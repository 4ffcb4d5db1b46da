package org.bookholder.view.gl;

import java.util.List;
import org.bookholder.view.Face;
import org.bookholder.view.Geometry;
import org.bookholder.view.ViewModel;
import org.bookholder.view.ViewModel.Caption;
import org.bookholder.view.ViewModel.Spot;
import org.jspecify.annotations.Nullable;

/**
 * Draws the words that stand beneath the right footlight and above the thread, and the count. Where there is too little room
 * beside the text, what would stand there stands above the thread.
 */
final class WordsPainter {
    private static final double ROW = 1.25;

    private final Labels labels;
    private final Paragraph besides;
    private final Paragraph message;
    private final Paragraph displaced;

    WordsPainter(Labels labels) {
        this.labels = labels;
        besides = new Paragraph(labels);
        message = new Paragraph(labels);
        displaced = new Paragraph(labels);
    }

    void paint(ViewModel view) {
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
        double line = above(displaced, displaced(view), geometry, 0);
        above(message, view.caption(Spot.MESSAGE), geometry, line);
    }

    /** How much higher than one row the words above the thread are, in pixels. */
    double height(ViewModel view) {
        Geometry geometry = view.geometry();
        Caption said = view.caption(Spot.MESSAGE);
        int rows = rows(displaced, displaced(view), geometry) + rows(message, said, geometry);
        double light = said == null ? 1 : said.light();
        return Math.max(0, rows - 1) * ROW * geometry.small() * light;
    }

    private static boolean isNumber(Caption count) {
        return count.text().length() <= 2;
    }

    /** What has no room beside the text, if anything has not. */
    private @Nullable Caption displaced(ViewModel view) {
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
        return geometry.width() - geometry.margin() - besideLeft(geometry);
    }

    /** Whether each row has room. */
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

    /** As large as the text; where there is little room, in the middle of it. */
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
        return place.rows(caption.text(), geometry.small(), 0.9 * geometry.width());
    }

    /** Sets rows above the thread, {@code lift} rows higher than the lowest; returns how many rows are taken by now. */
    private double above(Paragraph place, @Nullable Caption caption, Geometry geometry, double lift) {
        if (caption == null) {
            return lift;
        }
        double size = geometry.small();
        List<String> rows = wrapped(place, caption, geometry);
        double y = geometry.footLine() - 1.35 * size - (lift + rows.size() - 1) * ROW * size;
        for (int i = 0; i < rows.size(); i++) {
            labels.centred(rows.get(i), Face.FIGURE, size, geometry.width() / 2.0, y, caption.rgb(), caption.light());
            y += ROW * size;
        }
        return lift + rows.size();
    }
}
