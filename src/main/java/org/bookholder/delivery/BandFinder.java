package org.bookholder.delivery;

import org.bookholder.delivery.Finding.Grade;
import org.bookholder.sound.VoiceBand;

/**
 * Finds a voice without its upper half, as a telephone or a headset in its mode for calls records it. Confined to one
 * thread.
 */
final class BandFinder {
    /** The findings' kind. It is always looked for. */
    static final String KIND = "narrow";

    private static final int TELEPHONE_HERTZ = 4000;

    private final Findings findings;
    private final VoiceBand band;

    BandFinder(int rate, Findings findings) {
        this.findings = findings;
        band = new VoiceBand(rate);
    }

    /** The next sample; full scale is 1. */
    void hear(float sample) {
        band.hear(sample);
    }

    /** The sound ends. */
    void end() {
        if (band.limit().orElse(0) == TELEPHONE_HERTZ) {
            findings.add(Finding.ofAll(
                    Grade.LOOK,
                    KIND,
                    "the voice has nothing above 4 kHz, like a telephone",
                    "look which microphone and which file were used; a headset in its mode for calls sounds so"));
        }
    }
}
