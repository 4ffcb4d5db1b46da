package org.bookholder.sound;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The spectrum of steady noise, averaged over overlapping pieces of a second or so (Welch 1967). */
final class NoiseSpectrum {
    /** A tone has at least this many times the power of what lies beside it. */
    private static final double STANDING_OUT = 10;

    private static final double LOWEST_TONE = 35;
    private static final double HIGHEST_TONE = 12_000;

    /** What is measured of a tone lies this near it, in Hz, and what it is compared with from here to the other. */
    private static final double NEAR = 3;

    private static final double BESIDE = 20;

    /** The mean power of the bins of noise is this many times their median (chi-square with two degrees, averaged: little). */
    private static final double MEAN_TO_MEDIAN = 1.1;

    private final double[] power;
    private final double hertz;

    private NoiseSpectrum(double[] power, double hertz) {
        this.power = power;
        this.hertz = hertz;
    }

    /** Measures samples, at least a second of them; full scale is 1. */
    static NoiseSpectrum of(float[] samples, int rate) {
        int size = Integer.highestOneBit(rate);
        PowerSpectrum spectrum = new PowerSpectrum(size, rate);
        double[] power = new double[size / 2];
        int pieces = 0;
        for (int from = 0; from + size <= samples.length; from += size / 2) {
            spectrum.take(Arrays.copyOfRange(samples, from, from + size));
            for (int bin = 1; bin < power.length; bin++) {
                power[bin] += spectrum.bin(bin);
            }
            pieces++;
        }
        for (int bin = 0; bin < power.length; bin++) {
            // A Hann window leaves 3/8 of the power; negative frequencies have the other half.
            power[bin] *= 2 / (0.375 * size * size * pieces);
        }
        return new NoiseSpectrum(power, (double) rate / size);
    }

    /** The mean square between two frequencies. */
    double between(double from, double to) {
        double sum = 0;
        for (int bin = bin(from); bin < bin(to); bin++) {
            sum += power[bin];
        }
        return sum;
    }

    /** The mean square between two frequencies without the tones in it. */
    double floorBetween(double from, double to) {
        double sum = 0;
        for (double at = from; at < to; at += 2 * BESIDE) {
            double end = Math.min(to, at + 2 * BESIDE);
            sum += MEAN_TO_MEDIAN * median(bin(at), bin(end)) * (bin(end) - bin(at));
        }
        return sum;
    }

    /** The steady tones, the loudest first. */
    List<RoomNoise.Part> tones() {
        List<RoomNoise.Part> tones = new ArrayList<>();
        int near = Math.max(1, (int) Math.round(NEAR / hertz));
        int beside = (int) Math.round(BESIDE / hertz);
        for (int bin = bin(LOWEST_TONE); bin < Math.min(bin(HIGHEST_TONE), power.length - beside); bin++) {
            if (highest(bin, near) && stands(bin, near, beside)) {
                double level = Decibels.ofPower(sum(bin - near, bin + near + 1));
                tones.add(new RoomNoise.Part(RoomNoise.Kind.TONE, bin * hertz, bin * hertz, level));
            }
        }
        tones.sort((a, b) -> Double.compare(b.level(), a.level()));
        return tones;
    }

    private boolean highest(int bin, int near) {
        for (int other = Math.max(1, bin - 2 * near); other <= bin + 2 * near; other++) {
            if (power[other] > power[bin]) {
                return false;
            }
        }
        return true;
    }

    private boolean stands(int bin, int near, int beside) {
        double around = Math.max(median(Math.max(1, bin - beside), bin - near), median(bin + near + 1, bin + beside));
        return sum(bin - near, bin + near + 1) > STANDING_OUT * around * (2 * near + 1);
    }

    private double sum(int from, int to) {
        return Arrays.stream(power, from, to).sum();
    }

    private double median(int from, int to) {
        double[] sorted = Arrays.copyOfRange(power, from, Math.max(from + 1, to));
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }

    private int bin(double frequency) {
        return (int) Math.max(1, Math.min(power.length, Math.round(frequency / hertz)));
    }
}
