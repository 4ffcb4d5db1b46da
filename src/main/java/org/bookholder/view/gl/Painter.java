package org.bookholder.view.gl;

import java.util.List;
import org.bookholder.view.Geometry;
import org.bookholder.view.Palette;
import org.bookholder.view.Piece;
import org.bookholder.view.Row;
import org.bookholder.view.ViewModel;
import org.bookholder.view.ViewModel.RowView;
import org.bookholder.view.ViewModel.Stretch;

/** Draws a whole picture: the rows, then what stands beside them. */
final class Painter {
    /** Height of a capital above the baseline, in ems, halved: the middle of a row. */
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
        Labels labels = new Labels(canvas, texts);
        margins = new MarginPainter(shapes, labels);
        pages = new PagePainter(canvas, shapes, labels);
    }

    /** Draws {@code view} into the current framebuffer. */
    void paint(ViewModel view) {
        Geometry geometry = view.geometry();
        canvas.begin(geometry.width(), geometry.height(), view.mirrored(), view.upsideDown());
        double foot = geometry.footTop();
        canvas.fade(geometry.headBottom(), geometry.headClear(), foot - 1.15 * geometry.em(), foot);
        for (RowView row : view.rows()) {
            if (view.textLight() > 0) {
                row(row, geometry, view.textLight());
            }
        }
        view.page().ifPresent(page -> pages.paint(page, geometry));
        canvas.noFade(geometry.height());
        margins.paint(view);
        canvas.flush();
    }

    private void row(RowView view, Geometry geometry, double light) {
        Row row = view.row();
        Texts.Text text = texts.get(row.text(), row.face(), row.size());
        double baseline = view.middle() + MIDDLE * row.size();
        double left = geometry.columnLeft();
        measure(row, text);
        for (Stretch stretch : view.stretches()) {
            double from = stretch.from() == 0 ? -Raster.MARGIN : bounds[2 * stretch.from()];
            double to = stretch.to() == row.pieces().size() ? text.width() : bounds[2 * stretch.to()];
            canvas.text(text, left, baseline, from, to, stretch.rgb(), light);
            rules(row.pieces(), stretch, left, baseline + 0.17 * row.size(), row.size(), light);
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

    /** Words that the author stressed have a fine rule beneath. */
    private void rules(List<Piece> pieces, Stretch stretch, double left, double y, double size, double light) {
        for (int i = stretch.from(); i < stretch.to(); i++) {
            if (pieces.get(i).rule() > 0) {
                double thick = Math.max(1.5, RULE_EMS * size * pieces.get(i).rule());
                boolean sunk = stretch.rgb() == Palette.SPOKEN || stretch.rgb() == Palette.RESTING;
                int rgb = sunk ? stretch.rgb() : Palette.DOG_EAR;
                shapes.bar(left + bounds[2 * i], left + bounds[2 * i + 1], y, thick, rgb, 0.75 * light);
            }
        }
    }

    /** Finds the left and right end of each piece in pixels from the row's left. */
    private void measure(Row row, Texts.Text text) {
        if (bounds.length < 2 * row.pieces().size()) {
            bounds = new double[4 * row.pieces().size()];
        }
        int at = 0;
        for (int i = 0; i < row.pieces().size(); i++) {
            int length = row.pieces().get(i).text().length();
            bounds[2 * i] = text.starts().at(at);
            bounds[2 * i + 1] = text.starts().at(at + length);
            at += length + 1;
        }
    }
}
