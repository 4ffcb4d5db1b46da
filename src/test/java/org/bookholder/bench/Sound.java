package org.bookholder.bench;

import java.util.List;

/** Arithmetic on samples of one channel, 16 bit. */
final class Sound {
    /** Samples a second. */
    static final int RATE = 16_000;

    private static final int CENTISECOND = RATE / 100;

    /** A hundredth of a second quieter than the loudest one by more than this factor is not voice. */
    private static final double VOICE = 0.03;

    /** Margin on both sides of a voice, in hundredths of a second. */
    private static final int MARGIN = 8;

    private Sound() {}

    /** The part in which there is a voice, with 0.08 s before and after it. */
    static short[] trimmed(short[] sound) {
        int[] voice = voice(sound);
        return part(
                sound,
                Math.max(0, voice[0] - MARGIN * CENTISECOND),
                Math.min(sound.length, voice[1] + MARGIN * CENTISECOND));
    }

    /** The first sample of the voice and the one after its last: of the hundredths of a second that are not far quieter. */
    static int[] voice(short[] sound) {
        int windows = sound.length / CENTISECOND;
        int[] peaks = new int[windows];
        int loudest = 0;
        for (int i = 0; i < windows; i++) {
            peaks[i] = peak(sound, i * CENTISECOND, (i + 1) * CENTISECOND);
            loudest = Math.max(loudest, peaks[i]);
        }
        int first = 0;
        while (first < windows && peaks[first] <= VOICE * loudest) {
            first++;
        }
        int last = windows - 1;
        while (last > first && peaks[last] <= VOICE * loudest) {
            last--;
        }
        return new int[] {first * CENTISECOND, (last + 1) * CENTISECOND};
    }

    /** Where the voice is quietest for 0.05 s, between two shares of the whole: a place to break off. */
    static int quietest(short[] sound, double from, double to) {
        int window = 5 * CENTISECOND;
        int place = (int) (sound.length * from) + window / 2;
        long least = Long.MAX_VALUE;
        for (int start = (int) (sound.length * from); start + window < sound.length * to; start += CENTISECOND) {
            long sum = 0;
            for (int i = start; i < start + window; i++) {
                sum += Math.abs((int) sound[i]);
            }
            if (sum < least) {
                least = sum;
                place = start + window / 2;
            }
        }
        return place;
    }

    static short[] part(short[] sound, int from, int to) {
        short[] part = new short[to - from];
        System.arraycopy(sound, from, part, 0, part.length);
        return part;
    }

    static short[] joined(List<short[]> parts) {
        short[] all = new short[parts.stream().mapToInt(p -> p.length).sum()];
        int at = 0;
        for (short[] part : parts) {
            System.arraycopy(part, 0, all, at, part.length);
            at += part.length;
        }
        return all;
    }

    /** Scales to a peak of half of full scale. */
    static short[] levelled(short[] sound) {
        double factor = 0.5 * Short.MAX_VALUE / Math.max(1, peak(sound, 0, sound.length));
        short[] out = new short[sound.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = (short) Math.round(sound[i] * factor);
        }
        return out;
    }

    /** The sum of a sound and {@code factor} times another of at least its length, clipped at full scale. */
    static short[] mixed(short[] sound, double[] other, double factor) {
        short[] out = new short[sound.length];
        for (int i = 0; i < out.length; i++) {
            double sum = sound[i] + factor * other[i];
            out[i] = (short) Math.round(Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, sum)));
        }
        return out;
    }

    /** Root mean square. */
    static double rms(double[] sound) {
        double squares = 0;
        for (double sample : sound) {
            squares += sample * sample;
        }
        return Math.sqrt(squares / sound.length);
    }

    static double[] asDoubles(short[] sound) {
        double[] out = new double[sound.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = sound[i];
        }
        return out;
    }

    private static int peak(short[] sound, int from, int to) {
        int peak = 0;
        for (int i = from; i < to; i++) {
            peak = Math.max(peak, Math.abs((int) sound[i]));
        }
        return peak;
    }
}
