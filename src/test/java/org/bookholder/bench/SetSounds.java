package org.bookholder.bench;

import java.util.Random;

/** Imitations of noises on a set that are not speech, each as loud as a voice or louder. */
final class SetSounds {
    private static final double LOUD = 0.8 * Short.MAX_VALUE;
    private static final double SPEECH = 0.3 * Short.MAX_VALUE;

    /** The tone that marks picture and sound at the head of a take, 1 kHz (common practice). */
    private static final double BEEP_HERTZ = 1_000;

    private SetSounds() {}

    /** A slate, or hands, clapped together: noise that dies away within a twentieth of a second. */
    static short[] clap(Random random) {
        return noise(0.15, random, 0.9, time -> LOUD * Math.exp(-time / 0.015));
    }

    /** A fifth of a second of tone. */
    static short[] beep() {
        short[] out = new short[Sound.RATE / 5];
        for (int i = 0; i < out.length; i++) {
            out[i] = (short) Math.round(SPEECH * Math.sin(2 * Math.PI * BEEP_HERTZ * i / Sound.RATE));
        }
        return out;
    }

    /** Two bursts of breath, a quarter of a second apart, dark at the end. */
    static short[] cough(Random random) {
        return noise(
                0.6,
                random,
                0.4,
                time -> SPEECH * (Math.exp(-time / 0.08) + (time > 0.25 ? 0.7 * Math.exp(-(time - 0.25) / 0.1) : 0)));
    }

    /** Paper that slides and is laid down. */
    static short[] page(Random random) {
        return noise(0.8, random, 0.95, time -> 0.3 * SPEECH * Math.sin(Math.PI * time / 0.8) * (time > 0.6 ? 2 : 1));
    }

    /** Five short vowels on an outgoing breath: a pulsed tone with its overtones, falling. */
    static short[] laughter(Random random) {
        short[] out = new short[(int) (1.25 * Sound.RATE)];
        double phase = 0;
        for (int i = 0; i < out.length; i++) {
            double time = (double) i / Sound.RATE;
            double within = time % 0.25 / 0.25;
            phase += 2 * Math.PI * (260 - 60 * time) / Sound.RATE;
            double value = 0;
            for (int overtone = 1; overtone <= 12; overtone++) {
                double hertz = overtone * (260 - 60 * time);
                double vowel = Math.exp(-Math.pow((hertz - 750) / 250, 2))
                        + 0.6 * Math.exp(-Math.pow((hertz - 1_200) / 300, 2));
                value += vowel * Math.sin(overtone * phase);
            }
            double breath = 0.1 * random.nextGaussian();
            double open = within < 0.55 ? Math.sin(Math.PI * within / 0.55) : 0;
            out[i] = (short) Math.round(0.4 * SPEECH * (open * value + breath * (1 - open)));
        }
        return out;
    }

    /** The same line with its last third swallowed: falling by 15 dB and muffled. */
    static short[] mumbled(short[] line) {
        short[] out = line.clone();
        int from = line.length * 2 / 3;
        double muffled = 0;
        for (int i = from; i < line.length; i++) {
            double along = (double) (i - from) / (line.length - from);
            muffled += 0.35 * (line[i] - muffled);
            out[i] = (short) Math.round(muffled * Math.pow(10, -15 * along / 20));
        }
        return out;
    }

    private interface Loudness {
        double at(double seconds);
    }

    /** White noise, the brighter the nearer {@code brightness} is to 1. */
    private static short[] noise(double seconds, Random random, double brightness, Loudness loudness) {
        short[] out = new short[(int) (seconds * Sound.RATE)];
        double value = 0;
        for (int i = 0; i < out.length; i++) {
            value += brightness * (random.nextGaussian() - value);
            double sample = loudness.at((double) i / Sound.RATE) * value;
            out[i] = (short) Math.round(Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, sample)));
        }
        return out;
    }
}
