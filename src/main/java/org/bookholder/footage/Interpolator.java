package org.bookholder.footage;

import org.bookholder.problem.ProblemException;

/**
 * Reads between samples: a sinc under a Hann window, so that a voice stays as it is while its clock is stretched by
 * millionths.
 */
public final class Interpolator {
    /** How many samples on each side of a place count. */
    public static final int REACH = 16;

    private static final int PHASES = 1024;
    private static final float[][] WEIGHTS = weights();

    private Interpolator() {}

    /** Samples by their numbers. */
    @FunctionalInterface
    public interface Samples {
        /** The sample with a number; silence where there is none. */
        float at(long number) throws ProblemException;
    }

    /** The value at a place that need not be a whole number; at a whole one the sample itself. */
    public static double at(double place, Samples samples) throws ProblemException {
        long whole = (long) Math.floor(place);
        int phase = (int) Math.round((place - whole) * PHASES);
        if (phase == PHASES) {
            whole++;
            phase = 0;
        }
        if (phase == 0) {
            return samples.at(whole);
        }
        double sum = 0;
        for (int tap = 0; tap < 2 * REACH; tap++) {
            sum += WEIGHTS[phase][tap] * samples.at(whole + tap - (REACH - 1));
        }
        return sum;
    }

    private static float[][] weights() {
        float[][] weights = new float[PHASES][2 * REACH];
        for (int phase = 0; phase < PHASES; phase++) {
            for (int tap = 0; tap < 2 * REACH; tap++) {
                double x = tap - (REACH - 1) - (double) phase / PHASES;
                double window = Math.abs(x) >= REACH ? 0 : 0.5 + 0.5 * Math.cos(Math.PI * x / REACH);
                weights[phase][tap] = (float) (x == 0 ? 1 : window * Math.sin(Math.PI * x) / (Math.PI * x));
            }
        }
        return weights;
    }
}
