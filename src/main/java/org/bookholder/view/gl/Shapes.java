package org.bookholder.view.gl;

import org.bookholder.view.gl.Canvas.Point;

/** Convex polygons, ribbons and discs whose edges are softened over one pixel. */
final class Shapes {
    private static final double HALF = 0.5;
    private static final int DISC_CORNERS = 28;

    private final Canvas canvas;

    Shapes(Canvas canvas) {
        this.canvas = canvas;
    }

    /** A convex polygon, its corners clockwise on the screen as x, y pairs. */
    void polygon(int rgb, double light, double... corners) {
        int count = corners.length / 2;
        Point[] inner = new Point[count];
        Point[] outer = new Point[count];
        for (int i = 0; i < count; i++) {
            double[] out = outwards(corners, i, count);
            inner[i] = new Point(corners[2 * i] - HALF * out[0], corners[2 * i + 1] - HALF * out[1], light);
            outer[i] = new Point(corners[2 * i] + HALF * out[0], corners[2 * i + 1] + HALF * out[1], 0);
        }
        for (int i = 1; i + 1 < count; i++) {
            canvas.triangle(inner[0], inner[i], inner[i + 1], rgb);
        }
        for (int i = 0; i < count; i++) {
            int next = (i + 1) % count;
            canvas.triangle(inner[i], outer[i], outer[next], rgb);
            canvas.triangle(inner[i], outer[next], inner[next], rgb);
        }
    }

    /** A bar from x to x with round ends, {@code thick} pixels high. */
    void bar(double left, double right, double middle, double thick, int rgb, double light) {
        double radius = thick / 2;
        int corners = 16;
        double[] xy = new double[2 * corners];
        for (int i = 0; i < corners; i++) {
            double angle = -Math.PI / 2 + 2 * Math.PI * (i + HALF) / corners;
            double centre = Math.cos(angle) > 0 ? right - radius : left + radius;
            xy[2 * i] = centre + radius * Math.cos(angle);
            xy[2 * i + 1] = middle + radius * Math.sin(angle);
        }
        polygon(rgb, light, xy);
    }

    /** A disc. */
    void disc(double x, double y, double radius, int rgb, double light) {
        polygon(rgb, light, arc(x, y, radius, 0, 2 * Math.PI));
    }

    /** The lower part of a disc, {@code share} of its height. */
    void lowerDisc(double x, double y, double radius, double share, int rgb, double light) {
        double rise = Math.asin(Math.max(-1, Math.min(1, 1 - 2 * share)));
        polygon(rgb, light, arc(x, y, radius, rise, Math.PI - 2 * rise));
    }

    /** A band along points, as x, y pairs, with a thickness at each. */
    void ribbon(int rgb, double light, double[] points, double[] thick) {
        int count = points.length / 2;
        Point[][] lines = new Point[4][count];
        for (int i = 0; i < count; i++) {
            int before = Math.max(0, i - 1);
            int after = Math.min(count - 1, i + 1);
            double dx = points[2 * after] - points[2 * before];
            double dy = points[2 * after + 1] - points[2 * before + 1];
            double length = Math.max(1e-9, Math.hypot(dx, dy));
            double[] reach = {-thick[i] / 2 - HALF, -thick[i] / 2 + HALF, thick[i] / 2 - HALF, thick[i] / 2 + HALF};
            double strength = light * Math.min(1, thick[i]);
            for (int k = 0; k < 4; k++) {
                double along = thick[i] < 1 && (k == 1 || k == 2) ? 0 : reach[k];
                boolean edge = k == 0 || k == 3;
                lines[k][i] = new Point(
                        points[2 * i] - dy / length * along,
                        points[2 * i + 1] + dx / length * along,
                        edge ? 0 : strength);
            }
        }
        for (int k = 0; k < 3; k++) {
            for (int i = 0; i + 1 < count; i++) {
                canvas.triangle(lines[k][i], lines[k][i + 1], lines[k + 1][i + 1], rgb);
                canvas.triangle(lines[k][i], lines[k + 1][i + 1], lines[k + 1][i], rgb);
            }
        }
    }

    private static double[] arc(double x, double y, double radius, double from, double sweep) {
        boolean whole = sweep >= 2 * Math.PI - 1e-9;
        double[] xy = new double[2 * DISC_CORNERS];
        for (int i = 0; i < DISC_CORNERS; i++) {
            double angle = from + sweep * i / (whole ? DISC_CORNERS : DISC_CORNERS - 1.0);
            xy[2 * i] = x + radius * Math.cos(angle);
            xy[2 * i + 1] = y + radius * Math.sin(angle);
        }
        return xy;
    }

    /** Unit steps outwards from both edges at a corner, no longer than three pixels where the corner is sharp. */
    private static double[] outwards(double[] xy, int i, int count) {
        double[] before = normal(xy, (i + count - 1) % count, i);
        double[] after = normal(xy, i, (i + 1) % count);
        double x = before[0] + after[0];
        double y = before[1] + after[1];
        double scale = 1 / Math.max(0.33, (1 + before[0] * after[0] + before[1] * after[1]));
        return new double[] {x * scale, y * scale};
    }

    private static double[] normal(double[] xy, int from, int to) {
        double dx = xy[2 * to] - xy[2 * from];
        double dy = xy[2 * to + 1] - xy[2 * from + 1];
        double length = Math.max(1e-9, Math.hypot(dx, dy));
        return new double[] {dy / length, -dx / length};
    }
}
