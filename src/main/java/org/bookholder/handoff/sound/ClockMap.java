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
    /**
     * Where one take lies in the camera's file, and in the source.
     *
     * @param camera the take in the camera's file
     * @param source the take in the source
     * @param from the first tick of the camera's file that has it
     * @param to the last one
     */
    record Pair(Placement camera, Placement source, long from, long to) {
        static Pair of(Placement camera, Placement source) {
            return new Pair(camera, source, camera.inFile(camera.from()), camera.inFile(camera.to()));
        }

        private double away(double ticks) {
            return Math.max(0, Math.max(from - ticks, ticks - to));
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

    /** Ticks of a sample's time. */
    static double ticks(long sample, int rate) {
        return (double) sample * StreamTime.TICKS_PER_SECOND / rate;
    }
}
