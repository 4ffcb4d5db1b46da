package org.bookholder.footage;

import java.util.Arrays;
import java.util.Random;
import org.jtransforms.fft.FloatFFT_1D;

/** Makes what a camera would have recorded of a sound: another microphone, a room, noise, and a clock of its own. */
public final class Cameras {
    private static final int TAPS = 48;

    /** Samples on each side that count between two. */
    private static final int REACH = 8;

    private static final float[][] SINC = sinc();

    private Cameras() {}

    /** Samples as a track. */
    public static SoundTrack track(float[] samples) {
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

    /** Where a camera stands. */
    public enum Room {
        /** One echo, half as loud as the voice. */
        ONE_ECHO {
            @Override
            void addTo(double[] path, Random random) {
                path[ms(20 + random.nextInt(40))] += 0.5;
            }
        },
        /**
         * A bare room and a camera far from the voice: six early reflections, of which some are louder than the voice
         * itself, and a tail that dies away in 0.3 to 0.8 s with -6 to 3 dB of the voice's power.
         */
        BARE {
            @Override
            void addTo(double[] path, Random random) {
                for (int i = 0; i < 6; i++) {
                    path[ms(3 + random.nextInt(67))] += 1.2 * (2 * random.nextDouble() - 1);
                }
                double last = (0.3 + 0.5 * random.nextDouble()) * SoundTrack.RATE;
                double power = Math.pow(10, (-6 + 9 * random.nextDouble()) / 10);
                double[] tail = new double[path.length];
                double squares = 0;
                for (int i = ms(5); i < Math.min(last, tail.length); i++) {
                    // Down by 60 dB at its end.
                    tail[i] = random.nextGaussian() * Math.pow(10, -3 * i / last);
                    squares += tail[i] * tail[i];
                }
                for (int i = 0; i < tail.length; i++) {
                    path[i] += tail[i] * Math.sqrt(power / squares);
                }
            }
        };

        abstract void addTo(double[] path, Random random);

        private static int ms(int milliseconds) {
            return milliseconds * SoundTrack.RATE / 1000;
        }
    }

    /** The sound as a microphone that is a random filter hears it in a room. */
    public static float[] elsewhere(float[] sound, Room room, Random random) {
        double[] path = new double[SoundTrack.RATE];
        path[0] = 1;
        room.addTo(path, random);
        double[] filter = new double[TAPS];
        filter[0] = 1;
        for (int i = 1; i < TAPS; i++) {
            filter[i] = random.nextGaussian() * 0.5 * Math.exp(-i / 12.0);
        }
        float[] response = new float[path.length + TAPS];
        for (int i = 0; i < path.length; i++) {
            for (int k = 0; k < TAPS && path[i] != 0; k++) {
                response[i + k] += (float) (path[i] * filter[k]);
            }
        }
        return convolved(sound, response);
    }

    /** By FFT; as long as the sound. */
    private static float[] convolved(float[] sound, float[] response) {
        int size = Integer.highestOneBit(sound.length + response.length) * 2;
        FloatFFT_1D fft = new FloatFFT_1D(size);
        float[] a = Arrays.copyOf(sound, size);
        float[] b = Arrays.copyOf(response, size);
        fft.realForward(a);
        fft.realForward(b);
        a[0] *= b[0];
        a[1] *= b[1];
        for (int k = 2; k < size; k += 2) {
            float re = a[k] * b[k] - a[k + 1] * b[k + 1];
            a[k + 1] = a[k] * b[k + 1] + a[k + 1] * b[k];
            a[k] = re;
        }
        fft.realInverse(a, true);
        return Arrays.copyOf(a, sound.length);
    }

    /** With noise of so many decibels below the sound. */
    public static void addNoise(float[] sound, double decibels, Random random) {
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
    public static float[] counted(float[] sound, double from, double drift, int length) {
        float[] out = new float[length];
        for (int i = 0; i < length; i++) {
            out[i] = at(sound, from + i / (1 + drift));
        }
        return out;
    }

    /** Between samples, to the nearest of the steps that there is a windowed sinc for. */
    private static float at(float[] sound, double time) {
        int before = (int) Math.floor(time);
        float[] sinc = SINC[(int) ((time - before) * SINC.length)];
        float value = 0;
        for (int k = 0; k < sinc.length; k++) {
            int at = before + k - REACH + 1;
            value += at >= 0 && at < sound.length ? sound[at] * sinc[k] : 0;
        }
        return value;
    }

    private static float[][] sinc() {
        float[][] all = new float[1024][2 * REACH];
        for (int step = 0; step < all.length; step++) {
            for (int k = 0; k < 2 * REACH; k++) {
                double x = (step + 0.5) / all.length + REACH - 1 - k;
                double window = 0.5 + 0.5 * Math.cos(Math.PI * x / (REACH + 0.5));
                all[step][k] = (float) (window * Math.sin(Math.PI * x) / (Math.PI * x));
            }
        }
        return all;
    }

    /** Something that sounds for as long, but is something else: the sound backwards. */
    public static float[] another(float[] sound) {
        float[] out = Arrays.copyOf(sound, sound.length);
        for (int i = 0; i < out.length; i++) {
            out[i] = sound[sound.length - 1 - i];
        }
        return out;
    }
}
