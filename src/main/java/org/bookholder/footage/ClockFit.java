package org.bookholder.footage;

import java.util.List;
import java.util.Optional;

/**
 * How one clock runs against another: a straight line fitted to measurements.
 *
 * @param start reading of the first clock when the other is at zero, in samples
 * @param drift how much the first clock gains on the other, as a fraction
 * @param points how many measurements lie on it
 * @param spread how far those lie from it, root mean square, in samples
 */
record ClockFit(double start, double drift, int points, double spread) {
    /** Clocks of cameras and recorders differ by less, also those that are worn (common practice: under 100 millionths). */
    static final double MOST_DRIFT = 350e-6;

    /**
     * A measurement.
     *
     * @param at what the other clock shows, in samples
     * @param shows what the one shows
     */
    record Point(double at, double shows) {
        double gain() {
            return shows - at;
        }
    }

    double showsAt(double at) {
        return at + start + drift * at;
    }

    /** The same, so many samples earlier. */
    ClockFit earlier(int samples) {
        return new ClockFit(start - samples, drift, points, spread);
    }

    /** The line on which most points lie, within {@code slack} samples; empty if there are fewer than two points. */
    static Optional<ClockFit> through(List<Point> points, double slack) {
        ClockFit best = null;
        for (int i = 0; i < points.size(); i++) {
            for (int k = i + 1; k < points.size(); k++) {
                double drift = (points.get(k).gain() - points.get(i).gain())
                        / (points.get(k).at() - points.get(i).at());
                if (Math.abs(drift) > MOST_DRIFT) {
                    continue;
                }
                double start = points.get(i).gain() - drift * points.get(i).at();
                ClockFit line = fitted(near(points, new ClockFit(start, drift, 0, 0), slack));
                if (best == null
                        || line.points() > best.points()
                        || (line.points() == best.points() && line.spread() < best.spread())) {
                    best = line;
                }
            }
        }
        return Optional.ofNullable(best);
    }

    /** The points that lie on a line. */
    static List<Point> near(List<Point> points, ClockFit line, double slack) {
        return points.stream()
                .filter(p -> Math.abs(p.shows() - line.showsAt(p.at())) <= slack)
                .toList();
    }

    /** Least squares; a drift cannot be told from points that lie close together and is taken for none. */
    private static ClockFit fitted(List<Point> points) {
        double meanAt = points.stream().mapToDouble(Point::at).average().orElse(0);
        double meanGain = points.stream().mapToDouble(Point::gain).average().orElse(0);
        double across = 0;
        double along = 0;
        for (Point p : points) {
            across += (p.at() - meanAt) * (p.gain() - meanGain);
            along += (p.at() - meanAt) * (p.at() - meanAt);
        }
        double drift = along == 0 ? 0 : across / along;
        double start = meanGain - drift * meanAt;
        double squares = points.stream()
                .mapToDouble(p -> Math.pow(p.gain() - start - drift * p.at(), 2))
                .sum();
        return new ClockFit(start, drift, points.size(), Math.sqrt(squares / Math.max(1, points.size())));
    }
}
