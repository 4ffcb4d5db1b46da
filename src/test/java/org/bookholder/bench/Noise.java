package org.bookholder.bench;

import java.util.Random;

/** Sounds without a voice. */
final class Noise {
    /** Octaves that the pink noise is built of; at 16 kHz the lowest ends at 8,000 / 2^12 = 2 Hz, below all hearing. */
    private static final int OCTAVES = 12;

    /** Where the low noise begins to fall, in hertz. */
    private static final double LOWEST = 15;

    private Noise() {}

    /**
     * Noise of equal power in each octave, of any level: a sum of white noises, each held twice as long as the one before
     * (Voss and McCartney's method, from memory; {@code NoiseTest} measures the octaves).
     */
    static double[] pink(int samples, Random random) {
        double[] held = new double[OCTAVES];
        for (int octave = 0; octave < OCTAVES; octave++) {
            held[octave] = random.nextGaussian();
        }
        double[] out = new double[samples];
        for (int i = 0; i < samples; i++) {
            int octave = Math.min(OCTAVES - 1, Integer.numberOfTrailingZeros(i + 1));
            held[octave] = random.nextGaussian();
            double sum = random.nextGaussian();
            for (double value : held) {
                sum += value;
            }
            out[i] = sum;
        }
        return out;
    }

    /**
     * Low noise, as of a fan, a heater or a street behind a wall, of any level: its power for each hertz falls by 6 dB an
     * octave (brown noise), from {@value #LOWEST} Hz on.
     */
    static double[] low(int samples, Random random) {
        double keep = Math.exp(-2 * Math.PI * LOWEST / Sound.RATE);
        double[] out = new double[samples];
        double level = random.nextGaussian() / Math.sqrt(1 - keep * keep);
        for (int i = 0; i < samples; i++) {
            level = keep * level + random.nextGaussian();
            out[i] = level;
        }
        return out;
    }

    /** A quiet room: white noise at about -75 dBFS. */
    static short[] room(double seconds, Random random) {
        short[] out = new short[(int) (seconds * Sound.RATE)];
        for (int i = 0; i < out.length; i++) {
            out[i] = (short) (random.nextInt(21) - 10);
        }
        return out;
    }

    /** A voice with a noise of the same length, {@code decibels} below the mean power of the parts where it speaks. */
    static short[] over(short[] sound, double speechRms, double decibels, double[] noise) {
        double factor = speechRms / Sound.rms(noise) / Math.pow(10, decibels / 20);
        return Sound.mixed(sound, noise, factor);
    }
}
