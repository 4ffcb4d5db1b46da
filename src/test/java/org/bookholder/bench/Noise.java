package org.bookholder.bench;

import java.util.Random;

/** Sounds without a voice. */
final class Noise {
    /** Octaves that the pink noise is built of; at 16 kHz the lowest ends at 8,000 / 2^12 = 2 Hz, below all hearing. */
    private static final int OCTAVES = 12;

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

    /** A quiet room: white noise at about -75 dBFS. */
    static short[] room(double seconds, Random random) {
        short[] out = new short[(int) (seconds * Sound.RATE)];
        for (int i = 0; i < out.length; i++) {
            out[i] = (short) (random.nextInt(21) - 10);
        }
        return out;
    }

    /** A voice with pink noise {@code decibels} below the mean power of the parts where it speaks. */
    static short[] over(short[] sound, double speechRms, double decibels, Random random) {
        double[] noise = pink(sound.length, random);
        double factor = speechRms / Sound.rms(noise) / Math.pow(10, decibels / 20);
        return Sound.mixed(sound, noise, factor);
    }
}
