package org.bookholder.film.sound;

import org.bookholder.film.plan.Heard;

/**
 * The sound of one clip, sample by sample of the film, also a little before and after it. Where the source's clock runs at
 * another speed it is interpolated.
 */
final class ClipVoice {
    /** Samples on each side that count between two. */
    static final int REACH = 16;

    private static final int STEPS = 512;
    private static final float[][] SINC = sinc();

    /** Over a whole clip a difference of less than this many samples between two clocks cannot be heard or seen. */
    private static final double NO_DRIFT = 0.25;

    private final SoundPieces pieces;
    private final long start;
    private final double from;
    private final double step;
    private final boolean whole;

    /**
     * Begins.
     *
     * @param start number of the clip's first sample in the film
     * @param length how many samples it has
     */
    ClipVoice(SoundPieces pieces, Heard heard, long start, long length) {
        this.pieces = pieces;
        this.start = start;
        this.whole = Math.abs(heard.step() - 1) * length < NO_DRIFT;
        this.from = whole ? Math.rint(heard.from()) : heard.from();
        this.step = heard.step();
    }

    /** The sample of the film with that number. */
    float at(long sample) {
        if (whole) {
            return pieces.at((long) from + sample - start);
        }
        double place = from + (sample - start) * step;
        long before = (long) Math.floor(place);
        float[] weights = SINC[(int) ((place - before) * STEPS)];
        float value = 0;
        for (int i = 0; i < weights.length; i++) {
            value += weights[i] * pieces.at(before + i - REACH + 1);
        }
        return value;
    }

    /** A windowed sinc for each of the places between two samples; each adds up to one. */
    private static float[][] sinc() {
        float[][] all = new float[STEPS][2 * REACH];
        for (int step = 0; step < STEPS; step++) {
            double sum = 0;
            double[] weights = new double[2 * REACH];
            for (int i = 0; i < weights.length; i++) {
                double x = (step + 0.5) / STEPS + REACH - 1 - i;
                double window = 0.5 + 0.5 * Math.cos(Math.PI * x / (REACH + 0.5));
                weights[i] = window * Math.sin(Math.PI * x) / (Math.PI * x);
                sum += weights[i];
            }
            for (int i = 0; i < weights.length; i++) {
                all[step][i] = (float) (weights[i] / sum);
            }
        }
        return all;
    }
}
