package org.bookholder.view.cue;

import org.bookholder.session.Sound;

/**
 * Verdict on the sound. A verdict is shown only after its cause has lasted for a while, and goes when the cause has
 * been absent for as long, so that it never flickers. Levels are peaks in dBFS; that speech should peak between -20 and
 * -6 is common practice. Mutable. Confined to one thread.
 */
public final class SoundCue {
    private static final double SILENT = -90;
    private static final double LOW = -32;
    private static final double LOUD = -1;
    private static final double SINKING = 1.5;
    private static final double SECONDS = 2.5;

    private Verdict verdict = Verdict.UNKNOWN;

    /** The highest peak while somebody spoke; decays slowly. */
    private double loudest = -120;

    /** The verdict that will be shown if it lasts; the next field counts the seconds for which it has. */
    private Verdict candidate = Verdict.UNKNOWN;

    private double held;

    /** Number of samples at full scale so far. */
    private long clipped;

    /** Possible verdicts. */
    public enum Verdict {
        /** Nobody has spoken yet. */
        UNKNOWN("say a few words"),
        /** Nothing comes in at all. */
        GONE("no sound"),
        /** Speech is weak. */
        LOW("sound too low"),
        /** The level is right. */
        GOOD("sound good"),
        /** Speech clips at full scale. */
        LOUD("sound too loud");

        private final String words;

        Verdict(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** The current verdict. */
    public Verdict verdict() {
        return verdict;
    }

    /**
     * Advances by {@code seconds}.
     *
     * @param sound measures of the last second of sound
     * @param spoken whether words were recognised in it
     */
    public void advance(Sound sound, boolean spoken, double seconds) {
        boolean clips = sound.clipped() > clipped;
        clipped = sound.clipped();
        loudest = spoken ? Math.max(loudest - SINKING * seconds, sound.peak()) : loudest;
        Verdict now = judged(sound.peak(), loudest, clips);
        held = now == candidate ? held + seconds : 0;
        candidate = now;
        boolean begun = verdict == Verdict.UNKNOWN && now != Verdict.GONE;
        verdict = begun || clips || held >= SECONDS ? now : verdict;
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
