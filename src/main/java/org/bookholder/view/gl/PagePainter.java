package org.bookholder.view.gl;

import org.bookholder.view.cue.Palette;
import org.bookholder.view.layout.Face;
import org.bookholder.view.layout.Geometry;
import org.bookholder.view.page.ListPage;
import org.bookholder.view.page.PageView;

/** Draws a list in place of the script. */
final class PagePainter {
    /** Room for the number of entries that are out of sight, in multiples of its size. */
    private static final double MORE = 1.3;

    private final Canvas canvas;
    private final Shapes shapes;
    private final LabelPainter labels;

    PagePainter(Canvas canvas, Shapes shapes, LabelPainter labels) {
        this.canvas = canvas;
        this.shapes = shapes;
        this.labels = labels;
    }

    /** Draws a page, faded out above {@code foot}; says there how many entries do not fit. */
    void paint(PageView view, Geometry geometry, double foot) {
        ListPage page = view.page();
        double unit = page.unit(geometry);
        double small = page.smallSize(geometry);
        double top = 2 * geometry.margin() - view.scroll();
        double start = top + page.headHeight(geometry);
        int more = page.wideLead() ? 0 : below(page, geometry, start, foot);
        double end = more > 0 ? foot - MORE * small : foot;
        canvas.fade(
                geometry.headLine() + 0.8 * geometry.small(),
                2 * geometry.margin() + 0.35 * unit,
                end - 0.6 * unit,
                end);
        double light = view.light();
        double left = page.left(geometry);
        double heading = page.headingSize(geometry);
        labels.left(page.heading(), Face.READING, heading, left, top + 0.9 * heading, Palette.COMING, light);
        head(page, geometry, top + page.headTop(geometry), light);
        if (page.wideLead()) {
            keys(page, geometry, unit, start, light);
        } else {
            pickups(page, geometry, left, start, light);
        }
        canvas.noFade(geometry.height());
        if (more > 0) {
            labels.left(more + " more below", Face.FIGURE, small, left, foot - 0.5 * small, Palette.COMING, light);
        }
    }

    /** Draws the line below the heading and the choices, in as many rows as they need. */
    private void head(ListPage page, Geometry geometry, double top, double light) {
        double y = rows(page.under(), page, geometry, top, Palette.FIGURE, light);
        for (String row : page.headRows(geometry)) {
            y = rows(row, page, geometry, y, Palette.COMING, light);
        }
    }

    private double rows(String text, ListPage page, Geometry geometry, double top, int rgb, double light) {
        double size = page.smallSize(geometry);
        double left = page.left(geometry);
        int most = page.mostLetters(geometry);
        double y = top;
        int end;
        for (int at = 0; at < text.length(); at = end + 1) {
            end = ListPage.rowEnd(text, at, most);
            String row = text.substring(at, end).strip();
            labels.left(
                    labels.fitted(row, Face.FIGURE, size, geometry.width() - left),
                    Face.FIGURE,
                    size,
                    left,
                    y,
                    rgb,
                    light);
            y += page.headRow(geometry);
        }
        return y;
    }

    /** How many entries do not end above {@code foot}; if not all do, their number needs room there too. */
    private static int below(ListPage page, Geometry geometry, double start, double foot) {
        int all = page.entries().size();
        double last = foot - 0.5 * page.textSize(geometry);
        if (above(page, geometry, start, last) == all) {
            return 0;
        }
        return all - above(page, geometry, start, last - MORE * page.smallSize(geometry));
    }

    /** How many entries have their lowest row at {@code last} or above it. */
    private static int above(ListPage page, Geometry geometry, double start, double last) {
        double y = start;
        int count = 0;
        for (int i = 0; i < page.entries().size(); i++) {
            ListPage.Entry entry = page.entries().get(i);
            double end = y + (entry.note().isEmpty() ? 0 : page.noteBelow(geometry));
            count += end <= last ? 1 : 0;
            y += page.entryHeight(entry, geometry);
        }
        return count;
    }

    private void pickups(ListPage page, Geometry geometry, double left, double start, double light) {
        double unit = page.unit(geometry);
        double size = page.textSize(geometry);
        double small = page.smallSize(geometry);
        double right = geometry.width() - left;
        double text = left + 1.7 * Math.max(unit, small);
        double y = start;
        for (ListPage.Entry entry : page.entries()) {
            if (y > -2 * unit && y < geometry.height() + unit) {
                double call = right - labels.length(entry.call(), Face.FIGURE, small);
                labels.left(entry.lead(), Face.FIGURE, small, left, y, Palette.FIGURE, light);
                ear(text - 0.6 * unit, y - 0.12 * unit, 0.24 * unit, light);
                String words = labels.fitted(entry.text(), Face.READING, size, call - text - 0.5 * unit);
                labels.left(words, Face.READING, size, text, y, Palette.COMING, light);
                labels.left(entry.call(), Face.FIGURE, small, call, y, Palette.ASKING, light);
                String note = labels.fitted(entry.note(), Face.FIGURE, small, right - text);
                labels.left(note, Face.FIGURE, small, text, y + page.noteBelow(geometry), Palette.FIGURE, light);
            }
            y += page.entryHeight(entry, geometry);
        }
        for (String row : page.footRows(geometry)) {
            y = rows(row, page, geometry, y, Palette.COMING, light);
        }
    }

    private void ear(double x, double y, double size, double light) {
        shapes.polygon(x, y).to(x + size, y + size).to(x, y + size).fill(Palette.DOG_EAR, light);
    }

    private void keys(ListPage page, Geometry geometry, double unit, double start, double light) {
        int half = (page.entries().size() + 1) / 2;
        double column = 0.44 * geometry.width();
        double left = page.left(geometry);
        double size = 0.4 * unit;
        for (int i = 0; i < page.entries().size(); i++) {
            ListPage.Entry entry = page.entries().get(i);
            double x = left + (i < half ? 0 : column);
            double y = start + (i < half ? i : i - half) * page.entryHeight(entry, geometry);
            labels.left(entry.lead(), Face.READING, size, x, y, Palette.COMING, light);
            labels.left(entry.text(), Face.FIGURE, size, x + 0.39 * column, y, Palette.FIGURE, light);
        }
    }
}
