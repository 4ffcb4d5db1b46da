package org.bookholder.bench;

import java.util.Random;
import org.jtransforms.fft.DoubleFFT_1D;

/**
 * A room whose reverberation time is known: its response is noise that falls by 60 dB in that time (Polack 1988), after the voice
 * itself.
 *
 * @param seconds reverberation time
 * @param direct how much louder the voice itself is than all that the room adds, in dB
 */
record MadeRoom(double seconds, double direct) {
    private static final double FIRST_REFLECTION = 0.005;

    /** The response: 1 for the voice itself, and what the room adds. */
    double[] response(int rate, long seed) {
        Random random = new Random(seed);
        int first = (int) (FIRST_REFLECTION * rate);
        double[] response = new double[first + (int) (1.2 * seconds * rate)];
        double energy = 0;
        for (int i = first; i < response.length; i++) {
            response[i] = random.nextGaussian() * Math.pow(10, -3.0 * (i - first) / rate / seconds);
            energy += response[i] * response[i];
        }
        double gain = Math.sqrt(Math.pow(10, -direct / 10) / energy);
        for (int i = first; i < response.length; i++) {
            response[i] *= gain;
        }
        response[0] = 1;
        return response;
    }

    /** A voice as it sounds in the room. */
    float[] heard(float[] voice, int rate, long seed) {
        double[] response = response(rate, seed);
        int size = Integer.highestOneBit(voice.length + response.length) * 2;
        double[] sound = new double[2 * size];
        double[] room = new double[2 * size];
        for (int i = 0; i < voice.length; i++) {
            sound[2 * i] = voice[i];
        }
        for (int i = 0; i < response.length; i++) {
            room[2 * i] = response[i];
        }
        DoubleFFT_1D fft = new DoubleFFT_1D(size);
        fft.complexForward(sound);
        fft.complexForward(room);
        for (int i = 0; i < 2 * size; i += 2) {
            double real = sound[i] * room[i] - sound[i + 1] * room[i + 1];
            sound[i + 1] = sound[i] * room[i + 1] + sound[i + 1] * room[i];
            sound[i] = real;
        }
        fft.complexInverse(sound, true);
        float[] heard = new float[voice.length];
        for (int i = 0; i < heard.length; i++) {
            heard[i] = (float) sound[2 * i];
        }
        return heard;
    }

    /**
     * The reverberation time of a response by ISO 3382-2: the energy still to come (Schroeder 1965) falls from -5 to -25 dB in a third
     * of it.
     */
    static double byStandard(double[] response, int rate) {
        double[] toCome = new double[response.length];
        double sum = 0;
        // The direct sound is left out: it is the voice's, and not the room's.
        for (int i = response.length - 1; i > 0; i--) {
            sum += response[i] * response[i];
            toCome[i] = sum;
        }
        int from = 1;
        while (toCome[from] > toCome[1] * Math.pow(10, -0.5)) {
            from++;
        }
        int to = from;
        while (toCome[to] > toCome[1] * Math.pow(10, -2.5)) {
            to++;
        }
        return 3.0 * (to - from) / rate;
    }
}
