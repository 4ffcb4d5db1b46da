package org.bookholder.sound;

/**
 * Counts clipped samples: {@value #RUN} or more in a row at full scale. No standard defines this; the length is common
 * practice. Confined to one thread.
 */
public final class ClippedRuns {
    /** The shortest run that counts. */
    public static final int RUN = 3;

    private static final double FULL_SCALE = 32_767 / 32_768.0;

    private int run;
    private long clipped;

    /** How many of some samples are clipped; full scale is 1. */
    static long in(float[] samples) {
        ClippedRuns runs = new ClippedRuns();
        for (float sample : samples) {
            runs.hear(sample);
        }
        return runs.clipped();
    }

    /**
     * Takes in the next sample; full scale is 1. Returns how many samples are newly found to be clipped: 0, 1 or
     * {@value #RUN}.
     */
    public int hear(double sample) {
        if (Math.abs(sample) < FULL_SCALE) {
            run = 0;
            return 0;
        }
        run++;
        int fresh = run < RUN ? 0 : run == RUN ? RUN : 1;
        clipped += fresh;
        return fresh;
    }

    /** How many samples have been clipped so far. */
    public long clipped() {
        return clipped;
    }
}
