package org.bookholder.sound;

import java.util.OptionalInt;

/**
 * Up to which frequency a voice goes. A telephone, or a headset in its mode for calls, ends near 3.4 kHz (ITU-T G.712); newer
 * headsets and calls in their wide mode near 7 kHz (ITU-T G.722). Consonants of speech go on beyond both. The limits are
 * common practice. Confined to one thread.
 */
public final class VoiceBand {
    /** Speech falls by up to 10 dB from the upper half of the telephone's band to the band above it; coded calls by 35 and more. */
    private static final double LEAST = Decibels.power(-25);

    /** The same from 5 to 8 kHz and the band above: a voice falls by some 15 dB, a wide call by 50 and more. */
    private static final double LEAST_ABOVE = Decibels.power(-35);

    /** What has less than this part of its power in the telephone's upper half is a tone or a hum, and no voice. */
    private static final double VOICE = 1e-4;

    private static final int SIZE = 2048;
    private static final int SPECTRA_PER_SECOND = 4;
    private static final double LOUD = Decibels.power(-45);
    private static final int FEWEST = 20;
    private static final double LOW_HERTZ = 300;
    private static final double HALF_HERTZ = 1800;
    private static final double TELEPHONE_HERTZ = 3400;
    private static final double FROM_HERTZ = 4800;
    private static final double TO_HERTZ = 7800;
    private static final double ABOVE_HERTZ = 9000;
    private static final double TOP_HERTZ = 14_000;

    private final int rate;
    private final LoudSpectra frames;
    private int spectra;
    private double low;
    private double middle;
    private double high;
    private double top;

    /** Nothing heard yet of a sound of so many samples a second. */
    public VoiceBand(int rate) {
        this.rate = rate;
        frames = new LoudSpectra(SIZE, Math.max(SIZE, rate / SPECTRA_PER_SECOND), rate, LOUD, this::measure);
    }

    /** The next sample; full scale is 1. */
    public void hear(float sample) {
        frames.hear(sample);
    }

    /** The frequency in Hz above which there is nothing: 4000 or 8000; empty if the voice goes on, or too little was heard. */
    public OptionalInt limit() {
        if (spectra < FEWEST || middle <= VOICE * low) {
            return OptionalInt.empty();
        }
        if (rate > 2 * TO_HERTZ && high < LEAST * middle) {
            return OptionalInt.of(4000);
        }
        return rate > 2 * TOP_HERTZ && top < LEAST_ABOVE * high ? OptionalInt.of(8000) : OptionalInt.empty();
    }

    private void measure(PowerSpectrum spectrum) {
        spectra++;
        low += spectrum.between(LOW_HERTZ, HALF_HERTZ);
        middle += spectrum.between(HALF_HERTZ, TELEPHONE_HERTZ);
        high += spectrum.between(FROM_HERTZ, TO_HERTZ);
        top += spectrum.between(ABOVE_HERTZ, TOP_HERTZ);
    }
}
