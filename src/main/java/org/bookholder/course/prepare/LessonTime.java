package org.bookholder.course.prepare;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.bookholder.pace.RunningTime;
import org.bookholder.script.model.PaceSource;
import org.bookholder.script.model.Script;
import org.bookholder.script.pronounce.Vocabulary;

/**
 * How long a lesson will run, and its hard stretches.
 *
 * @param number its number in the course, from 1: those that can't be read have numbers, too
 * @param name the script's file name
 * @param title its title
 * @param words words as spoken
 * @param targetPace words per minute, pauses included
 * @param paceSource who says so
 * @param seconds running time at the target pace
 * @param ownSeconds running time at the presenter's own pace, if it was measured
 * @param readability how easy the text is; only English texts can be measured
 * @param hard its hard stretches
 */
public record LessonTime(
        int number,
        String name,
        String title,
        int words,
        int targetPace,
        PaceSource paceSource,
        double seconds,
        OptionalDouble ownSeconds,
        Optional<Readability> readability,
        List<HardStretch> hard) {
    /**
     * Engagement with course videos falls steeply after 6 minutes (Guo, Kim and Rubin 2014, 862 videos, 6.9 million
     * sessions).
     */
    public static final double WATCHED_SECONDS = 6 * 60;

    /** Copies the list. */
    public LessonTime {
        hard = List.copyOf(hard);
    }

    /** Measures a script. */
    public static LessonTime of(
            int number, String name, Script script, OptionalDouble ownPace, Optional<Vocabulary> vocabulary) {
        int words = script.spokenWords();
        int pace = script.settings().targetPace();
        return new LessonTime(
                number,
                name,
                script.title(),
                words,
                pace,
                script.settings().paceSource(),
                RunningTime.of(words, pace).seconds(),
                ownPace.isPresent()
                        ? OptionalDouble.of(
                                RunningTime.of(words, ownPace.getAsDouble()).seconds())
                        : OptionalDouble.empty(),
                script.settings().english() ? Optional.of(Readability.of(script)) : Optional.empty(),
                HardStretches.in(script, vocabulary));
    }

    /** Running time at the most reliable pace: the presenter's own if it was measured, otherwise the target. */
    public double likelySeconds() {
        return ownSeconds.orElse(seconds);
    }
}
