package org.bookholder.delivery;

import java.util.Arrays;
import org.bookholder.delivery.Finding.Grade;
import org.bookholder.sound.Decibels;
import org.bookholder.sound.LoudSpectra;
import org.bookholder.sound.PowerSpectrum;

/**
 * Finds a voice that is heard twice, a moment apart, as when two tracks of it lie one upon the other. Such an echo puts a
 * regular ripple on every spectrum; in the mean of the logarithm of all spectra (the cepstrum: Bogert, Healy and Tukey 1963)
 * the voice averages out and the ripple stays. Rooms give many echoes and no single one. The limits are our own. Confined to
 * one thread.
 */
final class EchoFinder {
    /** The findings' kind. It is always looked for. */
    static final String KIND = "echo";

    private static final int SIZE = 16_384;
    private static final double LOUD = Math.pow(Decibels.amplitude(-40), 2);
    private static final int FEWEST = 20;
    private static final double FROM_HERTZ = 300;
    private static final double TO_HERTZ = 6000;

    /** Shorter echoes are those of a desk or a wall close by, and the pitch of a voice looks alike. */
    private static final double SHORTEST = 0.015;

    private static final double LONGEST = 0.15;

    /** The ripple beside those of other lengths: as many times their usual size. */
    private static final double STANDING_OUT = 8;

    private static final double LEAST = 0.06;

    /** Steps from one length to the next, a second. */
    private static final int LENGTHS_PER_SECOND = 24_000;

    /** Bins around one that are taken off it, so that only ripples stay. */
    private static final int AROUND = 60;

    private final Findings findings;
    private final LoudSpectra frames;
    private final double hertz;
    private final double[] logs;
    private int spectra;

    EchoFinder(int rate, Findings findings) {
        this.findings = findings;
        frames = new LoudSpectra(SIZE, SIZE, rate, LOUD, this::measure);
        hertz = (double) rate / SIZE;
        logs = new double[(int) ((Math.min(TO_HERTZ, 0.45 * rate) - FROM_HERTZ) / hertz)];
    }

    /** The next sample; full scale is 1. */
    void hear(float sample) {
        frames.hear(sample);
    }

    private void measure(PowerSpectrum spectrum) {
        spectra++;
        int first = (int) (FROM_HERTZ / hertz);
        for (int i = 0; i < logs.length; i++) {
            logs[i] += Math.log(spectrum.bin(first + i) + 1e-9);
        }
    }

    /** The sound ends. */
    void end() {
        if (spectra < FEWEST) {
            return;
        }
        double[] ripples = ripples();
        int highest = 0;
        for (int i = 0; i < ripples.length; i++) {
            highest = ripples[i] > ripples[highest] ? i : highest;
        }
        double usual = Arrays.stream(ripples)
                .map(Math::abs)
                .sorted()
                .skip(ripples.length / 2)
                .findFirst()
                .orElse(0);
        if (ripples[highest] > Math.max(LEAST, STANDING_OUT * usual)) {
            findings.add(Finding.ofAll(
                    Grade.LOOK,
                    KIND,
                    "the voice is heard twice, " + Math.round(1000 * length(highest)) + " ms apart",
                    "look whether two tracks of the same voice are on; mute one, or move it until both fit"));
        }
    }

    private static double length(int index) {
        return SHORTEST + (double) index / LENGTHS_PER_SECOND;
    }

    /** For each length how large the ripple is; an echo of a part {@code a} of the voice's level gives {@code 2a}. */
    private double[] ripples() {
        double[] flat = flat();
        double[] ripples = new double[(int) ((LONGEST - SHORTEST) * LENGTHS_PER_SECOND)];
        for (int i = 0; i < ripples.length; i++) {
            double turn = 2 * Math.PI * hertz * length(i);
            double sum = 0;
            for (int bin = 0; bin < flat.length; bin++) {
                sum += flat[bin] * Math.cos(turn * (bin + (int) (FROM_HERTZ / hertz)));
            }
            // The taper halves the sum, and so does the cosine.
            ripples[i] = 4 * sum / flat.length;
        }
        return ripples;
    }

    /** The mean logarithms without what is broader than a ripple, tapered at both ends. */
    private double[] flat() {
        double[] flat = new double[logs.length];
        for (int bin = 0; bin < logs.length; bin++) {
            int from = Math.max(0, bin - AROUND);
            int to = Math.min(logs.length, bin + AROUND + 1);
            double around = Arrays.stream(logs, from, to).average().orElse(0);
            double taper = 0.5 - 0.5 * Math.cos(2 * Math.PI * bin / logs.length);
            flat[bin] = taper * (logs[bin] - around) / spectra;
        }
        return flat;
    }
}
