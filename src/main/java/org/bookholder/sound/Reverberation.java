package org.bookholder.sound;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.bookholder.speech.Biquad;

/**
 * How long a room goes on after a word, judged from speech alone. After a sound stops, a room's sound falls in a straight line of
 * decibels; reverberation time is how long it takes to fall by 60 dB (Schroeder 1965; ISO 3382-2). Speech rarely stops at once, so
 * most decays are longer than the room's and none is shorter: the time is taken from the fastest ones (Ratnam et al. 2003). What the
 * microphone hears of the voice itself drops away first, so a room that is hardly heard beside the voice gives a short time,
 * as it should. The limits are our own.
 */
final class Reverberation {
    private static final int FRAMES_PER_SECOND = 100;
    private static final double FROM_HERTZ = 700;
    private static final double TO_HERTZ = 4000;
    private static final double QUALITY = Math.sqrt(0.5);

    /** A decay begins no lower than this below the level of speech, in dB. */
    private static final double LOWEST_START = 15;

    /** A decay is followed down to this above the noise, in dB. */
    private static final double ABOVE_NOISE = 6;

    /** A decay falls by this at least, in dB, if enough do; the time is then that of the fast ones among them. */
    private static final double FALL = 20;

    /** What of it is left out, as ISO 3382-2 does. */
    private static final double LEFT_OUT = 5;

    /** In an echoing room few pauses are long enough, and less must do; what the voice adds is then left out by a larger part. */
    private static final double[] SHORT_FALLS = {15, 10};

    private static final double SHORT_LEFT_OUT = 0.6;

    /** How far it is followed, in dB. */
    private static final double MOST_FALL = 30;

    /** A step up by more than this, in dB, ends a decay. */
    private static final double RISE = 0.5;

    private static final int FEWEST = 4;

    /** The place among all long decays of the one that is told, the fastest being the first. */
    private static final double PLACE = 0.25;

    /** A voice of so many seconds has pauses; one so far above the noise, in dB, and that varies so much is a voice. */
    private static final double ENOUGH_SECONDS = 8;

    private static final double FAR_ABOVE_NOISE = 35;
    private static final double VARIES = 6;

    /** What is told of a voice after which the room never becomes quiet. */
    private static final double LONG = 2;

    private Reverberation() {}

    /**
     * The reverberation time in seconds; empty if there are too few pauses after which it could be judged.
     *
     * @param room the room alone, full scale is 1
     * @param voice the voice in it
     * @param rate samples a second
     */
    static OptionalDouble seconds(float[] room, float[] voice, int rate) {
        double noise = Decibels.ofPower(mean(powers(room, rate)));
        double[] powers = powers(voice, rate);
        double[] levels = smoothed(powers);
        double speech = Decibels.ofPower(mean(powers));
        List<int[]> decays = decays(levels, noise + ABOVE_NOISE, speech - LOWEST_START);
        double[] times = times(levels, decays, FALL, LEFT_OUT);
        if (times.length >= FEWEST) {
            return OptionalDouble.of(times[(int) (PLACE * times.length)]);
        }
        for (double fall : SHORT_FALLS) {
            times = times(levels, decays, fall, SHORT_LEFT_OUT * fall);
            if (times.length >= FEWEST) {
                return OptionalDouble.of(times[times.length / 2]);
            }
        }
        boolean voiceForLong = voice.length >= ENOUGH_SECONDS * rate && speech - noise > FAR_ABOVE_NOISE;
        return voiceForLong && varies(levels) ? OptionalDouble.of(LONG) : OptionalDouble.empty();
    }

    private static double[] times(double[] levels, List<int[]> decays, double fall, double leftOut) {
        return decays.stream()
                .filter(decay -> levels[decay[0]] - levels[decay[1] - 1] > fall)
                .mapToDouble(decay -> time(levels, decay[0], decay[1], leftOut))
                .sorted()
                .toArray();
    }

    private static boolean varies(double[] levels) {
        double[] sorted = levels.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length * 9 / 10] - sorted[sorted.length / 10] > VARIES;
    }

    /** The first frame of each decay and the one after its last. */
    private static List<int[]> decays(double[] levels, double lowest, double lowestStart) {
        List<int[]> decays = new ArrayList<>();
        int at = 1;
        while (at < levels.length) {
            int end = at;
            while (end < levels.length && levels[end] < levels[end - 1] + RISE && levels[end] > lowest) {
                end++;
            }
            int start = highest(levels, at - 1, end);
            if (levels[start] > lowestStart) {
                decays.add(new int[] {start, end});
            }
            at = end + 1;
        }
        return decays;
    }

    private static int highest(double[] levels, int from, int to) {
        int highest = from;
        for (int i = from; i < to; i++) {
            highest = levels[i] >= levels[highest] ? i : highest;
        }
        return highest;
    }

    /** The time of a fall by 60 dB, by the line of least squares through the fall that begins so much below the start. */
    private static double time(double[] levels, int start, int end, double leftOut) {
        int from = start;
        while (levels[from] > levels[start] - leftOut) {
            from++;
        }
        int to = from;
        double x = 0;
        double y = 0;
        double xx = 0;
        double xy = 0;
        for (; to < end && levels[to] > levels[start] - MOST_FALL; to++) {
            double t = (double) (to - from) / FRAMES_PER_SECOND;
            x += t;
            y += levels[to];
            xx += t * t;
            xy += t * levels[to];
        }
        int n = to - from;
        double slope = (n * xy - x * y) / (n * xx - x * x);
        return n < 3 ? 0 : Math.max(0, -60 / slope);
    }

    /** The power of each hundredth of a second in the band where rooms and voices are both heard. */
    private static double[] powers(float[] samples, int rate) {
        Biquad high = Biquad.highPass(FROM_HERTZ, QUALITY, rate);
        Biquad low = Biquad.lowPass(Math.min(TO_HERTZ, 0.4 * rate), QUALITY, rate);
        int step = rate / FRAMES_PER_SECOND;
        double[] powers = new double[samples.length / step];
        for (int i = 0; i < powers.length * step; i++) {
            double sample = low.pass(high.pass(samples[i]));
            powers[i / step] += sample * sample / step;
        }
        return powers;
    }

    private static double[] smoothed(double[] powers) {
        double[] levels = new double[powers.length];
        for (int i = 0; i < levels.length; i++) {
            double before = powers[Math.max(0, i - 1)];
            double after = powers[Math.min(levels.length - 1, i + 1)];
            levels[i] = Decibels.ofPower((before + 2 * powers[i] + after) / 4);
        }
        return levels;
    }

    private static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return values.length == 0 ? 0 : sum / values.length;
    }
}
