package org.bookholder.delivery;

import org.bookholder.sound.Decibels;
import org.bookholder.timing.StreamTime;

/**
 * Finds short holes in sound that breaks off and begins again within a millisecond or two. A voice dies away, and what it
 * stops for a consonant rises again slowly; only lost sound does both at once. The limits are our own. Confined to one thread.
 */
final class DropoutFinder {
    private static final int FRAMES_PER_SECOND = 4000;
    private static final int RING = 256;

    /** A frame is judged when so many have followed it. */
    private static final int BEHIND = 14;

    /** Frames before or after an edge that are taken together: 1.75 ms. */
    private static final int BESIDE = 7;

    /** A hole is softer than the sound on both sides by this much: 16 dB, as power. */
    private static final double SOFTER = 0.025;

    /** The sound on both sides is as loud as this at least. */
    private static final double LOUD = Decibels.power(-40);

    /** The voice goes on for a hundredth of a second before a hole; a plosive's burst does not. */
    private static final int LASTING = 40;

    private static final double LASTING_PART = 0.05;

    private static final int SHORTEST = FRAMES_PER_SECOND * 3 / 1000;
    private static final int LONG = FRAMES_PER_SECOND * 8 / 1000;

    /** Both edges and the depth of a short hole multiplied: 24 dB each on average; beats of limited voices come to 23.8. */
    private static final double CLEAR = Decibels.power(-72);

    /** As far back other beats are looked at: 24 ms, two of the lowest voices. */
    private static final int BEATS = 96;

    /** A short hole is deeper than these by 17 dB; beats of limited voices come to 15, drop-outs after a codec to 18 and more. */
    private static final double DEEPER = 0.02;

    private static final int LONGEST = FRAMES_PER_SECOND / 4;

    /** What is left of the sound next to an edge, after a codec that smears it. */
    private static final int SMEARED = 6;

    private final Runs.Sink sink;
    private final Runs.Sink suspected;
    private final int rate;
    private final double[] powers = new double[RING];
    private double sum;
    private int inFrame;
    private long samples;
    private long frames;
    private long edge = -1;
    private double edgeLevel;
    private double edgeDepth;
    private double inside;

    /**
     * Creates one.
     *
     * @param suspected told of what may be a short hole or the moment between two beats, possibly more than once
     */
    DropoutFinder(int rate, Runs.Sink sink, Runs.Sink suspected) {
        this.rate = rate;
        this.sink = sink;
        this.suspected = suspected;
    }

    /** The sample {@code index} samples after {@code blockStart}; full scale is 1. */
    void hear(StreamTime blockStart, int index, double sample) {
        sum += sample * sample;
        inFrame++;
        if (++samples * FRAMES_PER_SECOND >= (frames + 1) * rate) {
            powers[(int) (frames % RING)] = sum / inFrame;
            frames++;
            sum = 0;
            inFrame = 0;
            if (frames > RING) {
                judge(frames - 1 - BEHIND, blockStart.plus(StreamTime.ofSamples(index, rate)));
            }
        }
    }

    private void judge(long at, StreamTime now) {
        double before = mean(at - BESIDE, at);
        double after = mean(at + 1, at + 1 + BESIDE);
        if (edge >= 0) {
            goOn(at, after, now);
        }
        double next = loudest(at + 3, at + 12);
        boolean lasting = mean(at - LASTING, at - BESIDE) > LASTING_PART * before;
        if (before > LOUD && lasting && next < SOFTER * before && (edge < 0 || at - edge < SHORTEST)) {
            double depth = next / before;
            if (edge < 0 || depth < edgeDepth) {
                edge = at;
                edgeLevel = before;
                edgeDepth = depth;
                inside = 0;
            }
        }
    }

    /** Inside what may be a hole: it ends with an edge, or it is none. */
    private void goOn(long at, double after, StreamTime now) {
        if (at - edge >= 2 * SMEARED) {
            inside = Math.max(inside, loudest(at - SMEARED, at - SMEARED + 1));
        }
        if (inside > SOFTER * edgeLevel || at - edge > LONGEST) {
            edge = -1;
        } else if (at - edge >= SHORTEST
                && after > LOUD
                && loudest(at - 12, at - 3) < SOFTER * after
                && inside < SOFTER * after) {
            boolean sure =
                    at - edge >= LONG || clear(loudest(at - 12, at - 3) / after, inside / Math.min(edgeLevel, after));
            StreamTime end = now.since(StreamTime.ofSamples(BEHIND, FRAMES_PER_SECOND));
            (sure ? sink : suspected)
                    .run(end.since(StreamTime.ofSamples(at - edge, FRAMES_PER_SECOND)), end, (int) (at - edge));
            edge = sure ? -1 : edge;
        }
    }

    /**
     * A short hole may be the moment between two beats of a voice, unless it is deep with steep edges, and deeper than the moments
     * between the beats before.
     */
    private boolean clear(double rise, double depth) {
        double softest = Double.MAX_VALUE;
        for (long i = edge - BEATS; i < edge - SMEARED; i += 2) {
            softest = Math.min(softest, mean(i - 2, i + 2));
        }
        return edgeDepth * rise * depth < CLEAR && inside < DEEPER * softest;
    }

    private double mean(long from, long to) {
        double total = 0;
        for (long i = from; i < to; i++) {
            total += powers[(int) (i % RING)];
        }
        return total / (to - from);
    }

    /** The loudest millisecond that begins in these frames. */
    private double loudest(long from, long to) {
        double loudest = 0;
        for (long i = from; i < to; i++) {
            loudest = Math.max(loudest, mean(i - 2, i + 2));
        }
        return loudest;
    }
}
