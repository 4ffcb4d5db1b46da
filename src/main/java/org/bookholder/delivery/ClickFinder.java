package org.bookholder.delivery;

import org.bookholder.timing.StreamTime;

/**
 * Finds clicks: a jolt of a few samples, with no other jolt within a fiftieth of a second before and after. A jolt is a
 * large second difference of the samples. Consonants cause jolts too, but never a single one. Confined to one thread.
 */
final class ClickFinder {
    private static final int AROUND_PER_SECOND = 50;

    /** The longest click, in samples before and after its middle. */
    private static final int HALF = 4;

    private static final double LEAST = 0.03;
    private static final double TIMES = 5;

    private final Runs.Sink sink;
    private final int rate;
    private final int around;
    private final float[] jolts;
    private long samples;

    ClickFinder(int rate, Runs.Sink sink) {
        this.rate = rate;
        this.sink = sink;
        around = rate / AROUND_PER_SECOND;
        jolts = new float[2 * around + 1];
    }

    /** Adds the jolt of the sample {@code index} samples after {@code start}. */
    void hear(StreamTime start, int index, double jolt) {
        int newest = (int) (samples++ % jolts.length);
        jolts[newest] = (float) jolt;
        int middle = (newest + around + 1) % jolts.length;
        if (samples >= jolts.length && jolts[middle] >= LEAST && alone(middle)) {
            StreamTime at = start.plus(StreamTime.ofSamples(index, rate)).since(StreamTime.ofSamples(around, rate));
            sink.run(at, at.plus(StreamTime.ofSamples(HALF, rate)), 1);
        }
    }

    private boolean alone(int middle) {
        double there = jolts[middle];
        for (int off = 1; off <= around; off++) {
            double before = jolts[Math.floorMod(middle - off, jolts.length)];
            double after = jolts[(middle + off) % jolts.length];
            double allowed = off <= HALF ? there : there / TIMES;
            if (before > allowed || after >= allowed) {
                return false;
            }
        }
        return true;
    }
}
