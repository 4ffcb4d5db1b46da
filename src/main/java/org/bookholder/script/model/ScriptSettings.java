package org.bookholder.script.model;

/**
 * The settings in a script's front matter.
 *
 * @param targetPace words per minute, pauses included, {@value #MIN_PACE} to {@value #MAX_PACE}
 * @param paceSource who says so
 * @param language BCP 47 language tag of the script
 * @param lineBreaks what makes a line
 * @param contractions whether contractions may be read in full, and full forms contracted
 */
public record ScriptSettings(
        int targetPace, PaceSource paceSource, String language, LineBreaks lineBreaks, Wording contractions) {
    /** Common practice: 100 words a minute for a lively delivery to camera. */
    public static final int DEFAULT_PACE = 100;

    /** The slowest target pace accepted, in words per minute. */
    public static final int MIN_PACE = 40;

    /** The fastest target pace accepted, in words per minute. */
    public static final int MAX_PACE = 300;

    /** What makes a line. */
    public enum LineBreaks {
        /** Each sentence of a source line is a line. */
        SENTENCES,
        /** A source line is a line; its sentences are not split. */
        AS_WRITTEN
    }

    /** How far the reader may depart from the written text. */
    public enum Wording {
        /** "It's" and "it is" may be read for each other, as is natural in speech. */
        FREE,
        /** Saying one where the other is written is a misreading. */
        AS_WRITTEN
    }

    /** Checks the range. */
    public ScriptSettings {
        if (targetPace < MIN_PACE || targetPace > MAX_PACE) {
            throw new IllegalArgumentException(
                    "targetPace (" + targetPace + ") must be from " + MIN_PACE + " to " + MAX_PACE);
        }
    }

    /** The settings of a script that sets its own pace. */
    public ScriptSettings(int targetPace, String language, LineBreaks lineBreaks, Wording contractions) {
        this(targetPace, PaceSource.SCRIPT, language, lineBreaks, contractions);
    }

    /** Whether the script is in English, for which the program knows more rules than for other languages. */
    public boolean english() {
        return language.startsWith("en");
    }

    /** The same settings with another target pace. */
    public ScriptSettings paced(int words, PaceSource source) {
        return new ScriptSettings(words, source, language, lineBreaks, contractions);
    }

    /** The same settings with the pace that someone else than the script sets; a script's own pace stays. */
    public ScriptSettings aimed(int words, PaceSource source) {
        return paceSource == PaceSource.SCRIPT || source == PaceSource.SCRIPT ? this : paced(words, source);
    }

    /** The settings of a script that has no front matter. */
    public static ScriptSettings defaults() {
        return new ScriptSettings(DEFAULT_PACE, PaceSource.USUAL, "en-US", LineBreaks.SENTENCES, Wording.FREE);
    }
}
