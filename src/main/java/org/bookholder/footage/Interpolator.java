package org.bookholder.handoff.sound;

import org.bookholder.problem.ProblemException;

/**
 * Reads between samples: a sinc under a Hann window, so that a voice stays as it is while its clock is stretched by
 * millionths.
 */
final class Interpolator {
    private static final int REACH = 16;
    private static final int PHASES = 1024;

    private final float[][] weights = new float[PHASES][2 * REACH];

    Interpolator() {
        for (int phase = 0; phase < PHASES; phase++) {
            for (int tap = 0; tap < 2 * REACH; tap++) {
                double x = tap - (REACH - 1) - (double) phase / PHASES;
                double window = Math.abs(x) >= REACH ? 0 : 0.5 + 0.5 * Math.cos(Math.PI * x / REACH);
                weights[phase][tap] = (float) (x == 0 ? 1 : window * Math.sin(Math.PI * x) / (Math.PI * x));
            }
        }
    }

    /** The value at a place that need not be a whole number. */
    short at(Samples samples, int take, double place) throws ProblemException {
        long whole = (long) Math.floor(place);
        int phase = (int) Math.round((place - whole) * PHASES);
        if (phase == PHASES) {
            whole++;
            phase = 0;
        }
        if (phase == 0) {
            return samples.at(take, whole);
        }
        double sum = 0;
        for (int tap = 0; tap < 2 * REACH; tap++) {
            sum += weights[phase][tap] * samples.at(take, whole + tap - (REACH - 1));
        }
        return (short) Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, Math.round(sum)));
    }
}
