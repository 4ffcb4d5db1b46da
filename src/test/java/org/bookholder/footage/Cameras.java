package org.bookholder.footage;

import java.util.Arrays;
import java.util.Random;

/** Makes what a camera would have recorded of a sound: another microphone, a room, noise, and a clock of its own. */
final class Cameras {
    private static final int TAPS = 48;

    private Cameras() {}

    /** Samples as a track. */
    static SoundTrack track(float[] samples) {
        return new SoundTrack() {
            @Override
            public long length() {
                return samples.length;
            }

            @Override
            public float[] read(long from, int count) {
                float[] piece = new float[count];
                int first = (int) Math.max(0, -from);
                int beyond = (int) Math.min(count, samples.length - from);
                for (int i = first; i < beyond; i++) {
                    piece[i] = samples[(int) from + i];
                }
                return piece;
            }
        };
    }

    /** The sound and an echo of it from the room, through a microphone that is a random filter. */
    static float[] elsewhere(float[] sound, Random random) {
        double[] filter = new double[TAPS];
        filter[0] = 1;
        for (int i = 1; i < TAPS; i++) {
            filter[i] = random.nextGaussian() * 0.5 * Math.exp(-i / 12.0);
        }
        int echo = (20 + random.nextInt(40)) * SoundTrack.RATE / 1000;
        float[] out = new float[sound.length];
        for (int i = 0; i < sound.length; i++) {
            double value = 0;
            for (int k = 0; k < TAPS && k <= i; k++) {
                int at = i - k;
                value += filter[k] * (sound[at] + (at >= echo ? 0.5 * sound[at - echo] : 0));
            }
            out[i] = (float) value;
        }
        return out;
    }

    /** With noise of so many decibels below the sound. */
    static void addNoise(float[] sound, double decibels, Random random) {
        double squares = 0;
        for (float sample : sound) {
            squares += (double) sample * sample;
        }
        double level = Math.sqrt(squares / sound.length) * Math.pow(10, -decibels / 20);
        for (int i = 0; i < sound.length; i++) {
            sound[i] += (float) (level * random.nextGaussian());
        }
    }

    /** The sound as a clock counts it that gains {@code drift}, from {@code from} (may be negative) on. */
    static float[] counted(float[] sound, double from, double drift, int length) {
        float[] out = new float[length];
        for (int i = 0; i < length; i++) {
            out[i] = (float) at(sound, from + i / (1 + drift));
        }
        return out;
    }

    /** Between samples, by a windowed sinc of 16 points. */
    private static double at(float[] sound, double time) {
        int centre = (int) Math.floor(time);
        double value = 0;
        for (int k = centre - 7; k <= centre + 8; k++) {
            if (k >= 0 && k < sound.length) {
                double x = time - k;
                double window = 0.5 + 0.5 * Math.cos(Math.PI * x / 8.5);
                value += sound[k] * window * (Math.abs(x) < 1e-9 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x));
            }
        }
        return value;
    }

    /** Something that sounds for as long, but is something else: the sound backwards. */
    static float[] another(float[] sound) {
        float[] out = Arrays.copyOf(sound, sound.length);
        for (int i = 0; i < out.length; i++) {
            out[i] = sound[sound.length - 1 - i];
        }
        return out;
    }
}
