package org.bookholder.delivery;

import org.bookholder.timing.StreamTime;

/**
 * Finds clicks: a jolt within a thousandth of a second that stands alone. A jolt is the second difference of the samples,
 * which speech keeps small; where consonants make it large, they do so for longer. Confined to one thread.
 */
final class ClickFinder {
    /** Frames of 1 ms looked at before and after. */
    private static final int AROUND = 20;

    /** The frames next to a click may hold a part of it. */
    private static final int BESIDE = 2;

    private static final double LEAST = 0.03;
    private static final double TIMES = 5;

    private final Runs.Sink sink;
    private final double[] jolts = new double[2 * AROUND + 1];
    private final StreamTime[] times = new StreamTime[2 * AROUND + 1];
    private long frames;

    ClickFinder(Runs.Sink sink) {
        this.sink = sink;
    }

    void hear(StreamTime start, double jolt) {
        int length = jolts.length;
        int newest = (int) (frames % length);
        jolts[newest] = jolt;
        times[newest] = start;
        frames++;
        if (frames < length) {
            return;
        }
        int middle = (int) ((frames - 1 - AROUND) % length);
        double there = jolts[middle];
        if (there < LEAST) {
            return;
        }
        for (int off = 1; off <= AROUND; off++) {
            double before = jolts[Math.floorMod(middle - off, length)];
            double after = jolts[(middle + off) % length];
            double allowed = off <= BESIDE ? there : there / TIMES;
            if (before > allowed || after >= allowed) {
                return;
            }
        }
        sink.run(times[middle], times[(middle + 1) % length], 1);
    }
}
