package org.bookholder.view.gl;

/**
 * Draws convex polygons, ribbons and discs with edges softened over one pixel. Its arrays are reused for each shape, so
 * drawing creates no garbage. Confined to one thread.
 */
final class Shapes {
    private static final double HALF = 0.5;
    private static final int DISC_CORNERS = 28;
    private static final int BAR_CORNERS = 16;

    /** The most corners of a polygon or points of a ribbon. */
    private static final int MOST = 64;

    /** Lines along a ribbon: outer edge, inner edge, inner edge, outer edge. */
    private static final int LINES = 4;

    private final Canvas canvas;
    private final double[] ring = new double[2 * MOST];
    private final double[] inner = new double[2 * MOST];
    private final double[] outer = new double[2 * MOST];
    private int corners;
    private final double[] band = new double[LINES * 3 * MOST];

    Shapes(Canvas canvas) {
        this.canvas = canvas;
    }

    /** Begins a convex polygon with its first corner; the others follow clockwise on the screen. */
    Shapes polygon(double x, double y) {
        corners = 0;
        return to(x, y);
    }

    /** Adds the next corner of the polygon. */
    Shapes to(double x, double y) {
        ring[2 * corners] = x;
        ring[2 * corners + 1] = y;
        corners++;
        return this;
    }

    /** Fills the polygon. */
    void fill(int rgb, double light) {
        fill(rgb, light, corners);
    }

    /** Draws a bar from {@code left} to {@code right} with round ends, {@code thick} pixels high. */
    void bar(double left, double right, double middle, double thick, int rgb, double light) {
        double radius = thick / 2;
        for (int i = 0; i < BAR_CORNERS; i++) {
            double angle = -Math.PI / 2 + 2 * Math.PI * (i + HALF) / BAR_CORNERS;
            double centre = Math.cos(angle) > 0 ? right - radius : left + radius;
            ring[2 * i] = centre + radius * Math.cos(angle);
            ring[2 * i + 1] = middle + radius * Math.sin(angle);
        }
        fill(rgb, light, BAR_CORNERS);
    }

    /** A disc. */
    void disc(double x, double y, double radius, int rgb, double light) {
        arc(x, y, radius, 0, 2 * Math.PI);
        fill(rgb, light, DISC_CORNERS);
    }

    /** Draws the lower part of a disc, {@code share} of its height. */
    void lowerDisc(double x, double y, double radius, double share, int rgb, double light) {
        double rise = Math.asin(Math.max(-1, Math.min(1, 1 - 2 * share)));
        arc(x, y, radius, rise, Math.PI - 2 * rise);
        fill(rgb, light, DISC_CORNERS);
    }

    /** Draws a band along points, given as x, y pairs, with a thickness at each point. */
    void ribbon(int rgb, double light, double[] points, double[] thick) {
        int count = thick.length;
        for (int i = 0; i < count; i++) {
            int before = Math.max(0, i - 1);
            int after = Math.min(count - 1, i + 1);
            double dx = points[2 * after] - points[2 * before];
            double dy = points[2 * after + 1] - points[2 * before + 1];
            double length = Math.max(1e-9, Math.hypot(dx, dy));
            double strength = light * Math.min(1, thick[i]);
            for (int k = 0; k < LINES; k++) {
                boolean edge = k == 0 || k == LINES - 1;
                double side = k < 2 ? -thick[i] / 2 : thick[i] / 2;
                double reach = side + (k % 2 == 0 ? -HALF : HALF);
                double along = thick[i] < 1 && !edge ? 0 : reach;
                int at = 3 * (k * MOST + i);
                band[at] = points[2 * i] - dy / length * along;
                band[at + 1] = points[2 * i + 1] + dx / length * along;
                band[at + 2] = edge ? 0 : strength;
            }
        }
        for (int k = 0; k + 1 < LINES; k++) {
            for (int i = 0; i + 1 < count; i++) {
                canvas.triangle();
                along(k, i, rgb);
                along(k, i + 1, rgb);
                along(k + 1, i + 1, rgb);
                canvas.triangle();
                along(k, i, rgb);
                along(k + 1, i + 1, rgb);
                along(k + 1, i, rgb);
            }
        }
    }

    private void along(int line, int point, int rgb) {
        int at = 3 * (line * MOST + point);
        canvas.corner(band[at], band[at + 1], rgb, band[at + 2]);
    }

    /** Fills the polygon stored in {@link #ring}. */
    private void fill(int rgb, double light, int count) {
        for (int i = 0; i < count; i++) {
            soften(i, count);
        }
        for (int i = 1; i + 1 < count; i++) {
            canvas.triangle();
            corner(inner, 0, rgb, light);
            corner(inner, i, rgb, light);
            corner(inner, i + 1, rgb, light);
        }
        for (int i = 0; i < count; i++) {
            int next = (i + 1) % count;
            canvas.triangle();
            corner(inner, i, rgb, light);
            corner(outer, i, rgb, 0);
            corner(outer, next, rgb, 0);
            canvas.triangle();
            corner(inner, i, rgb, light);
            corner(outer, next, rgb, 0);
            corner(inner, next, rgb, light);
        }
    }

    private void corner(double[] of, int i, int rgb, double light) {
        canvas.corner(of[2 * i], of[2 * i + 1], rgb, light);
    }

    private void arc(double x, double y, double radius, double from, double sweep) {
        boolean whole = sweep >= 2 * Math.PI - 1e-9;
        for (int i = 0; i < DISC_CORNERS; i++) {
            double angle = from + sweep * i / (whole ? DISC_CORNERS : DISC_CORNERS - 1.0);
            ring[2 * i] = x + radius * Math.cos(angle);
            ring[2 * i + 1] = y + radius * Math.sin(angle);
        }
    }

    /**
     * Moves a corner half a pixel inwards and outwards from both edges, but no further than three pixels if the corner
     * is sharp.
     */
    private void soften(int i, int count) {
        int before = (i + count - 1) % count;
        int after = (i + 1) % count;
        double x1 = normalX(before, i);
        double y1 = normalY(before, i);
        double x2 = normalX(i, after);
        double y2 = normalY(i, after);
        double scale = HALF / Math.max(0.33, 1 + x1 * x2 + y1 * y2);
        inner[2 * i] = ring[2 * i] - (x1 + x2) * scale;
        inner[2 * i + 1] = ring[2 * i + 1] - (y1 + y2) * scale;
        outer[2 * i] = ring[2 * i] + (x1 + x2) * scale;
        outer[2 * i + 1] = ring[2 * i + 1] + (y1 + y2) * scale;
    }

    private double normalX(int from, int to) {
        return (ring[2 * to + 1] - ring[2 * from + 1]) / length(from, to);
    }

    private double normalY(int from, int to) {
        return -(ring[2 * to] - ring[2 * from]) / length(from, to);
    }

    private double length(int from, int to) {
        return Math.max(1e-9, Math.hypot(ring[2 * to] - ring[2 * from], ring[2 * to + 1] - ring[2 * from + 1]));
    }
}
