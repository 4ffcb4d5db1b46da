package org.bookholder.footage;

import org.jtransforms.fft.FloatFFT_1D;

/**
 * Finds a piece of sound in another one by generalised cross-correlation with phase transform (Knapp and Carter 1976): all
 * frequencies count alike, so that another microphone, a room and its echo change little.
 *
 * <p>Confined to one thread.
 */
final class PhaseCorrelator {
    /** Below is rumble and hum, above is what codecs take away. */
    static final double LOWEST = 100;

    static final double HIGHEST = 3400;

    private final int size;
    private final FloatFFT_1D fft;

    /**
     * Creates a correlator.
     *
     * @param size samples that are looked at in one go, a power of two
     */
    PhaseCorrelator(int size) {
        this.size = size;
        fft = new FloatFFT_1D(size);
    }

    /**
     * Where a piece was found.
     *
     * @param lag where its first sample lies in the other one, in samples and parts of them
     * @param height how far the peak stands out, in standard deviations of all that is not it
     */
    record Peak(double lag, double height) {}

    int size() {
        return size;
    }

    /** The spectrum of up to {@link #size} samples. */
    float[] spectrum(float[] samples) {
        float[] spectrum = new float[size];
        System.arraycopy(samples, 0, spectrum, 0, Math.min(size, samples.length));
        fft.realForward(spectrum);
        return spectrum;
    }

    /** What a spectrum is of; the array is used for it. */
    float[] inverse(float[] spectrum) {
        fft.realInverse(spectrum, true);
        return spectrum;
    }

    /**
     * The best place for a piece.
     *
     * @param whole the spectrum of the sound that is searched
     * @param piece the spectrum of the piece
     * @param from the first lag to consider, in samples
     * @param to the lag after the last
     */
    Peak find(float[] whole, float[] piece, int from, int to) {
        float[] product = inverse(product(whole, piece));
        double squares = 0;
        int best = from;
        for (int lag = from; lag < to; lag++) {
            squares += (double) product[lag] * product[lag];
            best = product[lag] > product[best] ? lag : best;
        }
        double peak = product[best];
        double rest = Math.sqrt(Math.max(1e-30, (squares - peak * peak) / Math.max(1, to - from - 1)));
        return new Peak(best + vertex(product, best), peak / rest);
    }

    /** Where the parabola through a peak and its neighbours has its top, from the peak. */
    private double vertex(float[] values, int at) {
        if (at == 0 || at == size - 1) {
            return 0;
        }
        double before = values[at - 1];
        double after = values[at + 1];
        double bend = before - 2.0 * values[at] + after;
        return bend >= 0 ? 0 : Math.max(-0.5, Math.min(0.5, 0.5 * (before - after) / bend));
    }

    private float[] product(float[] whole, float[] piece) {
        float[] product = new float[size];
        int first = (int) (LOWEST * size / SoundTrack.RATE);
        int last = (int) (HIGHEST * size / SoundTrack.RATE);
        for (int k = first; k <= last; k++) {
            float re = whole[2 * k] * piece[2 * k] + whole[2 * k + 1] * piece[2 * k + 1];
            float im = whole[2 * k + 1] * piece[2 * k] - whole[2 * k] * piece[2 * k + 1];
            float length = (float) Math.sqrt((double) re * re + (double) im * im);
            if (length > 0) {
                product[2 * k] = re / length;
                product[2 * k + 1] = im / length;
            }
        }
        return product;
    }
}
