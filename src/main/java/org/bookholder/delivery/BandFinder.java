package org.bookholder.delivery;

import org.bookholder.delivery.Finding.Grade;
import org.bookholder.footage.PowerSpectrum;
import org.bookholder.sound.Decibels;

/**
 * Finds a voice without its upper half, as a telephone or a headset in its mode for calls records it: it ends near 3.4
 * kHz (ITU-T G.712), where the consonants of speech go on to 8 kHz and beyond. The limit is common practice. Confined to
 * one thread.
 */
final class BandFinder {
    /** The findings' kind. It is always looked for. */
    static final String KIND = "narrow";

    /** Speech falls by up to 10 dB from the upper half of the telephone's band to the band above it; coded calls by 35 and more. */
    private static final double LEAST = Math.pow(10, -2.5);

    /** What has less than this part of its power in the telephone's upper half is a tone or a hum, and no voice. */
    private static final double VOICE = 1e-4;

    private static final int SIZE = 2048;
    private static final int SPECTRA_PER_SECOND = 4;
    private static final double LOUD = Math.pow(Decibels.amplitude(-45), 2);
    private static final int FEWEST = 20;
    private static final double LOW_HERTZ = 300;
    private static final double HALF_HERTZ = 1800;
    private static final double TELEPHONE_HERTZ = 3400;
    private static final double FROM_HERTZ = 4800;
    private static final double TO_HERTZ = 7800;

    private final Findings findings;
    private final int rate;
    private final LoudSpectra frames;
    private int spectra;
    private double low;
    private double middle;
    private double high;

    BandFinder(int rate, Findings findings) {
        this.rate = rate;
        this.findings = findings;
        frames = new LoudSpectra(SIZE, Math.max(SIZE, rate / SPECTRA_PER_SECOND), rate, LOUD, this::measure);
    }

    /** The next sample; full scale is 1. */
    void hear(float sample) {
        frames.hear(sample);
    }

    /** The sound ends. */
    void end() {
        if (spectra >= FEWEST && rate > 2 * TO_HERTZ && middle > VOICE * low && high < LEAST * middle) {
            findings.add(Finding.ofAll(
                    Grade.LOOK,
                    KIND,
                    "the voice has nothing above 4 kHz, like a telephone",
                    "look which microphone and which file were used; a headset in its mode for calls sounds so"));
        }
    }

    private void measure(PowerSpectrum spectrum) {
        spectra++;
        low += spectrum.between(LOW_HERTZ, HALF_HERTZ);
        middle += spectrum.between(HALF_HERTZ, TELEPHONE_HERTZ);
        high += spectrum.between(FROM_HERTZ, TO_HERTZ);
    }
}
