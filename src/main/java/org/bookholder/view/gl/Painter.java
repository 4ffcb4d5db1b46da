package org.bookholder.view.gl;

import java.util.Optional;
import org.bookholder.view.Frame;
import org.bookholder.view.Frame.RowView;
import org.bookholder.view.cue.Palette;
import org.bookholder.view.layout.Geometry;
import org.bookholder.view.layout.Row;
import org.bookholder.view.page.PageView;

/** Draws a whole picture: the rows, then everything around them. */
final class Painter {
    /** Half the height of a capital letter above the baseline, in ems: the middle of a row. */
    static final double MIDDLE = 0.36;

    private static final double RULE_EMS = 0.045;

    private final Canvas canvas;
    private final Shapes shapes;
    private final Texts texts;
    private final MarginPainter margins;
    private final PagePainter pages;
    private double[] bounds = new double[64];

    Painter(Canvas canvas, Texts texts) {
        this.canvas = canvas;
        this.texts = texts;
        shapes = new Shapes(canvas);
        LabelPainter labels = new LabelPainter(canvas, texts);
        margins = new MarginPainter(shapes, labels);
        pages = new PagePainter(canvas, shapes, labels);
    }

    /** Draws {@code view} into the current framebuffer. */
    void paint(Frame view) {
        Geometry geometry = view.geometry();
        canvas.begin(geometry.width(), geometry.height(), view.mirrored(), view.upsideDown());
        double foot = margins.footTop(view);
        canvas.fade(geometry.headBottom(), geometry.headClear(), foot - 1.15 * geometry.em(), foot);
        for (int i = 0; i < view.rowCount() && view.textLight() > 0; i++) {
            row(view.row(i), geometry, view.textLight());
        }
        Optional<PageView> page = view.page();
        if (page.isPresent()) {
            pages.paint(page.get(), geometry, foot);
        }
        canvas.noFade(geometry.height());
        margins.paint(view);
        canvas.flush();
    }

    private void row(RowView view, Geometry geometry, double light) {
        Row row = view.row();
        Texts.Text text = texts.get(row.text(), row.face(), row.size(), row.rightToLeft());
        double baseline = view.middle() + MIDDLE * row.size();
        double left = row.rightToLeft() ? geometry.columnRight() - text.advance() : geometry.columnLeft();
        measure(row, text);
        int from = 0;
        for (int i = 0; i < view.stretchCount(); i++) {
            stretch(row, text, from, view.end(i), left, baseline, view.rgb(i), light);
            rules(row, from, view.end(i), left, baseline + 0.17 * row.size(), view.rgb(i), light);
            from = view.end(i);
        }
        double size = 0.34 * geometry.em();
        double x = geometry.columnRight() + 0.3 * geometry.em();
        switch (view.mark()) {
            case NONE -> {
                return;
            }
            case DOG_EAR -> margins.dogEar(x, view.middle() - MIDDLE * row.size(), size, light);
            case TICK -> margins.tick(x, view.middle(), size, light);
        }
    }

    /**
     * Draws neighbouring words of one colour. In text that runs from the right, words are drawn one by one, because
     * their order on the screen may differ.
     */
    private void stretch(
            Row row, Texts.Text text, int from, int to, double left, double baseline, int rgb, double light) {
        if (!text.places().mixed()) {
            double start = from == 0 ? -Raster.MARGIN : bounds[2 * from];
            double end = to == row.pieces().size() ? text.width() : bounds[2 * to];
            canvas.text(text, left, baseline, start, end, rgb, light);
            return;
        }
        double space = 0.12 * row.size();
        for (int i = from; i < to; i++) {
            canvas.text(text, left, baseline, bounds[2 * i] - space, bounds[2 * i + 1] + space, rgb, light);
        }
    }

    /** Draws a fine line under words that the author stressed. */
    private void rules(Row row, int from, int to, double left, double y, int rgb, double light) {
        for (int i = from; i < to; i++) {
            int rule = row.pieces().get(i).rule();
            if (rule > 0) {
                double thick = Math.max(1.5, RULE_EMS * row.size() * rule);
                boolean sunk = rgb == Palette.SPOKEN || rgb == Palette.RESTING;
                shapes.bar(
                        left + bounds[2 * i],
                        left + bounds[2 * i + 1],
                        y,
                        thick,
                        sunk ? rgb : Palette.DOG_EAR,
                        0.75 * light);
            }
        }
    }

    /** Finds the left and right end of each piece, in pixels from the left end of the row. */
    private void measure(Row row, Texts.Text text) {
        if (bounds.length < 2 * row.pieces().size()) {
            bounds = new double[4 * row.pieces().size()];
        }
        int at = 0;
        for (int i = 0; i < row.pieces().size(); i++) {
            int length = row.pieces().get(i).text().length();
            bounds[2 * i] = text.places().left(at, at + length);
            bounds[2 * i + 1] = text.places().right(at, at + length);
            at += length + 1;
        }
    }
}
