package org.bookholder.sound;

import java.util.Arrays;
import java.util.Random;

/** Signals for tests; full scale is 1. */
final class Tones {
    static final int RATE = 48_000;

    private Tones() {}

    /** A sine whose peak lies at so many dBFS. */
    static float[] sine(double hertz, double decibels, int rate, double seconds) {
        float[] samples = new float[(int) Math.round(seconds * rate)];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (float) (Decibels.amplitude(decibels) * Math.sin(2 * Math.PI * hertz * i / rate));
        }
        return samples;
    }

    /** White noise of so many dBFS root mean square, the same each time. */
    static float[] noise(double decibels, int rate, double seconds) {
        Random random = new Random(1770);
        float[] samples = new float[(int) Math.round(seconds * rate)];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (float) (Decibels.amplitude(decibels) * random.nextGaussian());
        }
        return samples;
    }

    static float[] silence(int rate, double seconds) {
        return new float[(int) Math.round(seconds * rate)];
    }

    /** One after the other. */
    static float[] joined(float[]... parts) {
        float[] all = new float[Arrays.stream(parts).mapToInt(p -> p.length).sum()];
        int at = 0;
        for (float[] part : parts) {
            System.arraycopy(part, 0, all, at, part.length);
            at += part.length;
        }
        return all;
    }

    /** All at once. */
    static float[] mixed(float[]... parts) {
        float[] all = parts[0].clone();
        for (int part = 1; part < parts.length; part++) {
            for (int i = 0; i < all.length; i++) {
                all[i] += parts[part][i];
            }
        }
        return all;
    }
}
