package org.bookholder.view;

import org.bookholder.session.SessionState.Sound;

/**
 * What is to be said of the sound. A verdict is given only when it has held for a while, and goes when the cause has been
 * away for as long, so that it never flickers. Levels are peaks in dBFS; that speech should peak between -20 and -6 is
 * common practice.
 *
 * @param verdict what is said now
 * @param loudest the highest peak while somebody spoke, sinking slowly
 * @param candidate what would be said if it held
 * @param held seconds for which it has
 * @param clipped samples at full scale up to now
 */
record SoundCue(Verdict verdict, double loudest, Verdict candidate, double held, long clipped) {
    /** Nothing known yet. */
    static final SoundCue NONE = new SoundCue(Verdict.UNKNOWN, -120, Verdict.UNKNOWN, 0, 0);

    private static final double SILENT = -90;
    private static final double LOW = -32;
    private static final double LOUD = -1;
    private static final double SINKING = 1.5;
    private static final double SECONDS = 2.5;

    /** What can be said. */
    enum Verdict {
        /** Nobody has spoken yet. */
        UNKNOWN("say a few words"),
        /** Nothing comes in at all. */
        GONE("no sound"),
        /** Speech is weak. */
        LOW("sound too low"),
        /** All is well. */
        GOOD("sound good"),
        /** Speech is cut off at full scale. */
        LOUD("sound too loud");

        private final String words;

        Verdict(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }
    }

    /**
     * The cue {@code seconds} later.
     *
     * @param sound the sound of the last second
     * @param spoken whether words were recognised in it
     * @param seconds time that has passed
     */
    SoundCue after(Sound sound, boolean spoken, double seconds) {
        boolean clips = sound.clipped() > clipped;
        double sunk = spoken ? loudest - SINKING * seconds : loudest;
        double peak = spoken ? Math.max(sunk, sound.peak()) : sunk;
        Verdict now = judged(sound.peak(), peak, clips);
        double lasting = now == candidate ? held + seconds : 0;
        boolean begun = verdict == Verdict.UNKNOWN && now != Verdict.GONE;
        boolean settled = begun || clips || lasting >= SECONDS;
        return new SoundCue(settled ? now : verdict, peak, now, lasting, sound.clipped());
    }

    private static Verdict judged(double now, double peak, boolean clips) {
        if (clips || peak >= LOUD) {
            return Verdict.LOUD;
        }
        if (now <= SILENT) {
            return Verdict.GONE;
        }
        if (peak <= SILENT) {
            return Verdict.UNKNOWN;
        }
        return peak < LOW ? Verdict.LOW : Verdict.GOOD;
    }
}
