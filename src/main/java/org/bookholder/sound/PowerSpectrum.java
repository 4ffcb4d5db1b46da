package org.bookholder.sound;

import org.jtransforms.fft.FloatFFT_1D;

/** The power of a piece of sound by frequency, under a Hann window. Confined to one thread. */
public final class PowerSpectrum {
    private final int rate;
    private final FloatFFT_1D fft;
    private final float[] window;
    private final float[] work;

    /**
     * For pieces of one length.
     *
     * @param length samples of a piece, a power of two
     * @param rate samples a second
     */
    public PowerSpectrum(int length, int rate) {
        this.rate = rate;
        fft = new FloatFFT_1D(length);
        window = new float[length];
        work = new float[length];
        for (int i = 0; i < length; i++) {
            window[i] = (float) (0.5 - 0.5 * Math.cos(2 * Math.PI * i / length));
        }
    }

    /** Takes in the next piece, which stays as it is. */
    public void take(float[] piece) {
        for (int i = 0; i < work.length; i++) {
            work[i] = piece[i] * window[i];
        }
        fft.realForward(work);
    }

    /** The power of the last piece at {@code number} times rate by length, in the same unit; from 1 to half the length. */
    public double bin(int number) {
        return work[2 * number] * work[2 * number] + work[2 * number + 1] * work[2 * number + 1];
    }

    /** The power of the last piece between two frequencies in Hz, in a unit of its own; above half the rate it is 0. */
    public double between(double from, double to) {
        double power = 0;
        int end = (int) Math.min(work.length / 2.0, to * work.length / rate);
        for (int bin = (int) (from * work.length / rate); bin < end; bin++) {
            power += bin(bin);
        }
        return power;
    }
}
