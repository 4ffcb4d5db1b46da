package org.bookholder.view.cue;

import org.bookholder.session.Sound;
import org.bookholder.sound.PeakLevel;
import org.bookholder.sound.SpeechPeaks;

/**
 * Verdict on the sound. A verdict is shown only after its cause has lasted for a while, and goes when the cause has
 * been absent for as long, so that it never flickers. The level is judged by the rule of the sound check, {@link PeakLevel}.
 * Mutable. Confined to one thread.
 */
public final class SoundCue {
    private static final double SECONDS = 2.5;

    private Verdict verdict = Verdict.UNKNOWN;

    private final SpeechPeaks peaks = new SpeechPeaks();

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
        /** Speech is too weak to record. */
        LOW("sound too low"),
        /** Speech is weaker than it should be. */
        LOWISH("sound rather low"),
        /** The level is right. */
        GOOD("sound good"),
        /** Speech is louder than it should be. */
        LOUDISH("sound rather loud"),
        /** Speech clips at full scale, or soon will. */
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
        if (spoken) {
            peaks.hear(sound.peak(), seconds);
        }
        Verdict now = judged(sound.peak(), peaks.highest(), clips);
        held = now == candidate ? held + seconds : 0;
        candidate = now;
        boolean begun = verdict == Verdict.UNKNOWN && now != Verdict.GONE;
        verdict = begun || clips || held >= SECONDS ? now : verdict;
    }

    private static Verdict judged(double now, double peak, boolean clips) {
        if (clips) {
            return Verdict.LOUD;
        }
        if (PeakLevel.of(now) == PeakLevel.NONE) {
            return Verdict.GONE;
        }
        return switch (PeakLevel.of(peak)) {
            case NONE -> Verdict.UNKNOWN;
            case TOO_LOW -> Verdict.LOW;
            case LOW -> Verdict.LOWISH;
            case RIGHT -> Verdict.GOOD;
            case HIGH -> Verdict.LOUDISH;
            case TOO_HIGH -> Verdict.LOUD;
        };
    }
}
