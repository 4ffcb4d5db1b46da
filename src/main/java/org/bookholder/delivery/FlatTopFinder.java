package org.bookholder.delivery;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.bookholder.sound.Decibels;
import org.bookholder.timing.StreamTime;

/**
 * Finds waves that were cut off before the sound was lowered: many tops of one height, and flat. The height is not that
 * of full scale, and a codec leaves ripples on the tops, so both are judged over seconds: how many tops reach the height, and
 * how long each stays near it beside how wide it is. A limiter makes tops of one height, too, but round ones. The limits are our
 * own. Confined to one thread.
 */
final class FlatTopFinder {
    private static final double SECONDS = 2;
    private static final double SOFT = Decibels.amplitude(-40);

    /** The height is that of the top with this place, so that ripples don't set it. */
    private static final int PLACE = 4;

    /** Tops between these parts of the height are cut off, if any are. */
    private static final double CUT_FROM = 0.88;

    /** Tops from here on are counted beside them. */
    private static final double COUNTED_FROM = 0.72;

    private static final int FEWEST = 25;

    /** This part of all high tops has one height. */
    private static final double SHARE = 0.55;

    /**
     * How long a top stays above 85 % of the height, as part of the time above half of it. A sine gives 0.53 and one cut off by
     * 3 dB 0.76; voices are sharper, and where they are as flat, their tops are not of one height.
     */
    private static final double FLAT = 0.53;

    /** Where nearly all tops have one height it is a tone, which is as flat as a sine when nothing is cut off. */
    private static final double TONE = 0.95;

    private static final double FLAT_TONE = 0.65;
    private static final double NEAR_TOP = 0.85;
    private static final double HALF = 0.5;

    /** Stretches that are no further apart are told as one. */
    private static final double TOGETHER_SECONDS = 10;

    /** One stretch may be an odd vowel. */
    private static final int FEWEST_STRETCHES = 2;

    private final Sink sink;
    private final int rate;
    private final float[] window;
    private final List<Flat> found = new ArrayList<>();
    private int filled;

    /** A stretch with tops that are flat. */
    private record Flat(StreamTime start, StreamTime end, int tops, double height) {
        Flat with(Flat next) {
            return new Flat(start, next.end, tops + next.tops, Math.max(height, next.height));
        }
    }

    /** Takes in each stretch with waves that are cut off. */
    @FunctionalInterface
    interface Sink {
        /** So many tops are flat from {@code start} to {@code end}, at this height; full scale is 1. */
        void flat(StreamTime start, StreamTime end, int tops, double height);
    }

    private record Lobe(int from, int to, double height) {}

    FlatTopFinder(int rate, Sink sink) {
        this.rate = rate;
        this.sink = sink;
        window = new float[(int) (SECONDS * rate)];
    }

    /** The sample {@code index} samples after {@code blockStart}. */
    void hear(StreamTime blockStart, int index, double sample) {
        window[filled++] = (float) sample;
        if (filled == window.length) {
            judge(blockStart.plus(StreamTime.ofSamples(index + 1L, rate)));
            filled = 0;
        }
    }

    private void judge(StreamTime end) {
        List<Lobe> lobes = lobes();
        if (lobes.size() < FEWEST) {
            return;
        }
        double[] heights = lobes.stream().mapToDouble(Lobe::height).sorted().toArray();
        double height = heights[heights.length - 1 - PLACE];
        List<Lobe> cut = lobes.stream()
                .filter(lobe -> lobe.height() >= CUT_FROM * height)
                .toList();
        long counted = lobes.stream()
                .filter(lobe -> lobe.height() >= COUNTED_FROM * height)
                .count();
        if (height < SOFT || cut.size() < FEWEST || cut.size() < SHARE * counted) {
            return;
        }
        double[] flat = cut.stream().mapToDouble(lobe -> flatness(lobe, height)).toArray();
        Arrays.sort(flat);
        double needed = cut.size() < TONE * counted ? FLAT : FLAT_TONE;
        if (flat[flat.length / 2] >= needed) {
            found.add(new Flat(
                    end.since(StreamTime.ofSamples(filled - cut.get(0).from(), rate)),
                    end.since(StreamTime.ofSamples(
                            filled - cut.get(cut.size() - 1).to(), rate)),
                    cut.size(),
                    height));
        }
    }

    /** The sound ends; tells what was found. */
    void end() {
        if (found.size() < FEWEST_STRETCHES) {
            return;
        }
        Flat together = found.get(0);
        for (Flat next : found.subList(1, found.size())) {
            if (next.start().since(together.end()).seconds() < TOGETHER_SECONDS) {
                together = together.with(next);
            } else {
                tell(together);
                together = next;
            }
        }
        tell(together);
    }

    private void tell(Flat flat) {
        sink.flat(flat.start(), flat.end(), flat.tops(), flat.height());
    }

    private List<Lobe> lobes() {
        List<Lobe> lobes = new ArrayList<>();
        int from = 0;
        double height = 0;
        for (int i = 0; i < filled; i++) {
            if (i > 0 && (window[i] > 0) != (window[i - 1] > 0)) {
                if (height > SOFT) {
                    lobes.add(new Lobe(from, i, height));
                }
                from = i;
                height = 0;
            }
            height = Math.max(height, Math.abs(window[i]));
        }
        return lobes;
    }

    /** How long a top stays near the height, beside how long above half of it. */
    private double flatness(Lobe lobe, double height) {
        int near = 0;
        int half = 0;
        for (int i = lobe.from(); i < lobe.to(); i++) {
            double sample = Math.abs(window[i]);
            near += sample >= NEAR_TOP * height ? 1 : 0;
            half += sample >= HALF * height ? 1 : 0;
        }
        return (double) near / Math.max(1, half);
    }
}
