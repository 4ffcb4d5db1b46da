package org.bookholder.handoff.sound;

import java.util.List;
import org.bookholder.footage.Placement;
import org.bookholder.timing.StreamTime;

/**
 * Where the time of a camera's file lies in another source, by the takes that both have. Between and outside the takes the
 * nearest one tells.
 *
 * @param pairs both places of each take that both have, at least one
 */
record ClockMap(List<Pair> pairs) {
    private static final double WHOLE = 1e9;

    /** Where one take lies in the camera's file, and in the source. */
    record Pair(Placement camera, Placement source) {
        private double away(double ticks) {
            double from = camera.inFile(camera.from());
            double to = camera.inFile(camera.to());
            return Math.max(0, Math.max(from - ticks, ticks - to));
        }

        private double session(double ticks) {
            return camera.takeStart().ticks() + (ticks - camera.start()) / (1 + camera.drift() / WHOLE);
        }
    }

    /** The take that tells about a time of the camera's file, in ticks. */
    Pair nearest(double ticks) {
        Pair best = pairs.get(0);
        for (Pair pair : pairs) {
            best = pair.away(ticks) < best.away(ticks) ? pair : best;
        }
        return best;
    }

    /** The time in the source, in ticks from its beginning; negative before it. */
    static double inSource(Pair pair, double ticks) {
        double inTake = pair.session(ticks) - pair.source().takeStart().ticks();
        return pair.source().start() + inTake * (1 + pair.source().drift() / WHOLE);
    }

    /** The session time, in ticks; negative before it. */
    static double inSession(Pair pair, double ticks) {
        return pair.session(ticks);
    }

    /** Ticks of a sample's time. */
    static double ticks(long sample, int rate) {
        return (double) sample * StreamTime.TICKS_PER_SECOND / rate;
    }
}
