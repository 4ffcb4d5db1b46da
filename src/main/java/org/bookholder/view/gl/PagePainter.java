package org.bookholder.view.gl;

import org.bookholder.view.cue.Palette;
import org.bookholder.view.layout.Face;
import org.bookholder.view.layout.Geometry;
import org.bookholder.view.page.ListPage;
import org.bookholder.view.page.PageView;

/** Draws a list in place of the script. */
final class PagePainter {
    private static final double KEYS_LEFT = 0.09;
    private static final double FIRST_CHOICE_EMS = 2.55;
    private static final double CHOICE_SIZE = 0.48;

    private final Canvas canvas;
    private final Shapes shapes;
    private final LabelPainter labels;

    PagePainter(Canvas canvas, Shapes shapes, LabelPainter labels) {
        this.canvas = canvas;
        this.shapes = shapes;
        this.labels = labels;
    }

    /** Draws a page, faded out above {@code foot}. */
    void paint(PageView view, Geometry geometry, double foot) {
        ListPage page = view.page();
        double unit = page.unit(geometry);
        double top = 2 * geometry.margin() - view.scroll();
        canvas.fade(
                geometry.headLine() + 0.8 * geometry.small(),
                2 * geometry.margin() + 0.35 * unit,
                foot - 0.6 * unit,
                foot);
        double light = view.light();
        double left = page.wideLead() ? KEYS_LEFT * geometry.width() : listLeft(geometry);
        labels.left(page.heading(), Face.READING, 0.78 * unit, left, top + 0.7 * unit, Palette.COMING, light);
        labels.left(page.under(), Face.FIGURE, 0.42 * unit, left, top + 1.65 * unit, Palette.FIGURE, light);
        for (int i = 0; i < page.choices().size(); i++) {
            double y = top + (FIRST_CHOICE_EMS + i * ListPage.CHOICE_EMS) * unit;
            String choice =
                    labels.fitted(page.choices().get(i), Face.FIGURE, CHOICE_SIZE * unit, geometry.width() - 2 * left);
            labels.left(choice, Face.FIGURE, CHOICE_SIZE * unit, left, y, Palette.COMING, light);
        }
        double start = top + page.headHeight(geometry);
        if (page.wideLead()) {
            keys(page, geometry, unit, start, light);
        } else {
            pickups(page, geometry, unit, left, start, light);
        }
    }

    private static double listLeft(Geometry geometry) {
        return Math.min(geometry.columnLeft(), 0.14 * geometry.width());
    }

    private void pickups(ListPage page, Geometry geometry, double unit, double left, double start, double light) {
        double right = geometry.width() - left;
        double text = left + 1.7 * unit;
        double y = start;
        for (ListPage.Entry entry : page.entries()) {
            if (y > -2 * unit && y < geometry.height() + unit) {
                double call = right - labels.length(entry.call(), Face.FIGURE, 0.42 * unit);
                labels.left(entry.lead(), Face.FIGURE, 0.42 * unit, left, y, Palette.FIGURE, light);
                ear(left + 1.1 * unit, y - 0.12 * unit, 0.24 * unit, light);
                String words = labels.fitted(entry.text(), Face.READING, 0.52 * unit, call - text - 0.5 * unit);
                labels.left(words, Face.READING, 0.52 * unit, text, y, Palette.COMING, light);
                labels.left(entry.call(), Face.FIGURE, 0.42 * unit, call, y, Palette.ASKING, light);
                String note = labels.fitted(entry.note(), Face.FIGURE, 0.4 * unit, right - text);
                labels.left(note, Face.FIGURE, 0.4 * unit, text, y + 0.62 * unit, Palette.FIGURE, light);
            }
            y += page.entryHeight(geometry);
        }
    }

    private void ear(double x, double y, double size, double light) {
        shapes.polygon(x, y).to(x + size, y + size).to(x, y + size).fill(Palette.DOG_EAR, light);
    }

    private void keys(ListPage page, Geometry geometry, double unit, double start, double light) {
        int half = (page.entries().size() + 1) / 2;
        double column = 0.44 * geometry.width();
        double left = KEYS_LEFT * geometry.width();
        double size = 0.4 * unit;
        for (int i = 0; i < page.entries().size(); i++) {
            ListPage.Entry entry = page.entries().get(i);
            double x = left + (i < half ? 0 : column);
            double y = start + (i < half ? i : i - half) * page.entryHeight(geometry);
            labels.left(entry.lead(), Face.READING, size, x, y, Palette.COMING, light);
            labels.left(entry.text(), Face.FIGURE, size, x + 0.39 * column, y, Palette.FIGURE, light);
        }
    }
}
