package org.bookholder.sound;

import java.util.Arrays;

/**
 * The highest peak of the last twelve seconds of speech, pauses left out: as much as a sound check hears. Makes no objects, as it is
 * asked for each picture. Mutable. Confined to one thread.
 */
public final class SpeechPeaks {
    /** How much speech is looked at, in seconds. */
    public static final int SECONDS = 12;

    private final double[] peaks = new double[SECONDS];
    private int second;
    private double inSecond;

    /** Nothing heard yet. */
    public SpeechPeaks() {
        Arrays.fill(peaks, Decibels.SILENCE);
    }

    /** Somebody spoke for so many seconds, with this peak in dBFS. */
    public void hear(double peak, double seconds) {
        peaks[second] = Math.max(peaks[second], peak);
        inSecond += seconds;
        if (inSecond >= 1) {
            inSecond = 0;
            second = (second + 1) % SECONDS;
            peaks[second] = Decibels.SILENCE;
        }
    }

    /** The highest, in dBFS. */
    public double highest() {
        double highest = Decibels.SILENCE;
        for (double peak : peaks) {
            highest = Math.max(highest, peak);
        }
        return highest;
    }
}
