package org.bookholder.sound;

/**
 * The highest point of the wave between the samples, according to ITU-R BS.1770-4, Annex 2: the samples are
 * interpolated at four times their rate, or twice if the rate is 96 kHz or more. Confined to one thread.
 */
final class TruePeak {
    private static final int TAPS_PER_PHASE = 12;

    /**
     * The absolute weights of a point add up to less than 2.5, so there can be no new peak between samples quieter than
     * this share of the highest one.
     */
    private static final double QUIET = 0.4;

    private final double[][] phases;
    private final double[] past = new double[2 * TAPS_PER_PHASE];
    private int newest;
    private int loud;
    private double highest;

    TruePeak(int rate) {
        int factor = rate < 96_000 ? 4 : 2;
        phases = new double[factor][];
        for (int phase = 0; phase < factor; phase++) {
            phases[phase] = phase(phase, factor);
        }
    }

    /** A sinc function at points between the samples, under a Hann window. */
    private static double[] phase(int phase, int factor) {
        double[] taps = new double[TAPS_PER_PHASE];
        double half = TAPS_PER_PHASE / 2.0;
        for (int i = 0; i < TAPS_PER_PHASE; i++) {
            // Tap 0 weights the newest sample; the interpolated point lies near the middle.
            double distance = i - half + (double) phase / factor;
            double sinc = distance == 0 ? 1 : Math.sin(Math.PI * distance) / (Math.PI * distance);
            taps[i] = sinc * 0.5 * (1 + Math.cos(Math.PI * distance / half));
        }
        return taps;
    }

    void hear(double sample) {
        // Each sample is stored twice, so that the last twelve are always contiguous.
        newest = newest == 0 ? TAPS_PER_PHASE - 1 : newest - 1;
        past[newest] = sample;
        past[newest + TAPS_PER_PHASE] = sample;
        loud = Math.abs(sample) > QUIET * highest ? TAPS_PER_PHASE : loud - 1;
        if (loud > 0) {
            interpolate();
        }
    }

    private void interpolate() {
        // Written out, as this is most of what measuring loudness costs.
        double[] x = past;
        int at = newest;
        double most = highest;
        for (double[] taps : phases) {
            double sum = taps[0] * x[at]
                    + taps[1] * x[at + 1]
                    + taps[2] * x[at + 2]
                    + taps[3] * x[at + 3]
                    + taps[4] * x[at + 4]
                    + taps[5] * x[at + 5]
                    + taps[6] * x[at + 6]
                    + taps[7] * x[at + 7]
                    + taps[8] * x[at + 8]
                    + taps[9] * x[at + 9]
                    + taps[10] * x[at + 10]
                    + taps[11] * x[at + 11];
            most = Math.max(most, Math.abs(sum));
        }
        highest = most;
    }

    /** The highest amplitude so far; 1 is full scale, and higher values are possible. */
    double highest() {
        return highest;
    }
}
