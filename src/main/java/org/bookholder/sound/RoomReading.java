package org.bookholder.sound;

import java.util.Arrays;
import java.util.Optional;

/**
 * What a room sounds like while nobody speaks.
 *
 * @param floor the usual level: the median of tenths of a second, root mean square about the mean, in dBFS
 * @param loudest the loudest tenth of a second, in dBFS
 * @param offset the mean of the samples, as a share of full scale: a constant offset that the microphone adds @param
 *     hum mains hum, if there is any
 */
public record RoomReading(double floor, double loudest, double offset, Optional<Hum> hum) {
    private static final int PER_SECOND = 10;

    /** Measures samples, at least one second of them; full scale is 1. */
    public static RoomReading of(float[] samples, int rate) {
        if (samples.length < rate) {
            throw new IllegalArgumentException("samples (" + samples.length + ") must last a second at least");
        }
        double offset = mean(samples, 0, samples.length);
        int step = rate / PER_SECOND;
        double[] levels = new double[samples.length / step];
        for (int i = 0; i < levels.length; i++) {
            levels[i] = Decibels.ofPower(variance(samples, i * step, step));
        }
        Arrays.sort(levels);
        return new RoomReading(levels[levels.length / 2], levels[levels.length - 1], offset, Hum.of(samples, rate));
    }

    private static double mean(float[] samples, int from, int count) {
        double sum = 0;
        for (int i = from; i < from + count; i++) {
            sum += samples[i];
        }
        return sum / count;
    }

    private static double variance(float[] samples, int from, int count) {
        double mean = mean(samples, from, count);
        double sum = 0;
        for (int i = from; i < from + count; i++) {
            sum += (samples[i] - mean) * (samples[i] - mean);
        }
        return sum / count;
    }
}
