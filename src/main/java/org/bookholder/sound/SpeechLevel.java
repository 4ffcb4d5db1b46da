package org.bookholder.sound;

import java.util.Arrays;

/**
 * The level of speech by method B of ITU-T P.56: measured while somebody speaks, leaving out pauses longer than a
 * breath.
 *
 * @param level level in dBFS; -120 if there is no sound
 * @param activity the share of time in which there is speech, 0 to 1
 */
public record SpeechLevel(double level, double activity) {
    private static final double SMOOTHING_SECONDS = 0.03;
    private static final double HANGOVER_SECONDS = 0.2;
    private static final double MARGIN_DB = 15.9;
    private static final int THRESHOLDS = 15;

    /** Measures samples; full scale is 1. */
    public static SpeechLevel of(float[] samples, int rate) {
        double keep = Math.exp(-1 / (rate * SMOOTHING_SECONDS));
        int hangover = (int) Math.ceil(rate * HANGOVER_SECONDS);
        long[] active = new long[THRESHOLDS];
        int[] since = new int[THRESHOLDS];
        Arrays.fill(since, hangover);
        double once = 0;
        double twice = 0;
        double squares = 0;
        for (float sample : samples) {
            squares += (double) sample * sample;
            once = keep * once + (1 - keep) * Math.abs(sample);
            twice = keep * twice + (1 - keep) * once;
            for (int i = 0; i < THRESHOLDS; i++) {
                since[i] = twice >= threshold(i) ? 0 : since[i] + 1;
                active[i] += since[i] <= hangover ? 1 : 0;
            }
        }
        return at(active, squares, samples.length);
    }

    /** Each threshold is twice the one before. */
    private static double threshold(int index) {
        return Math.scalb(1.0, index - THRESHOLDS);
    }

    /** Finds the threshold for which the level of the sound above it exceeds the threshold by exactly the margin. */
    private static SpeechLevel at(long[] active, double squares, int samples) {
        double lastLevel = Decibels.SILENCE;
        double lastOver = Double.NaN;
        for (int i = 0; i < THRESHOLDS && active[i] > 0; i++) {
            double level = Decibels.ofPower(squares / active[i]);
            double over = level - Decibels.ofAmplitude(threshold(i)) - MARGIN_DB;
            if (over <= 0) {
                double part = Double.isNaN(lastOver) ? 1 : lastOver / (lastOver - over);
                double found = Double.isNaN(lastOver) ? level : lastLevel + part * (level - lastLevel);
                return new SpeechLevel(found, Math.min(1, squares / samples / Decibels.power(found)));
            }
            lastLevel = level;
            lastOver = over;
        }
        return new SpeechLevel(lastLevel, samples == 0 || active[0] == 0 ? 0 : (double) active[0] / samples);
    }
}
