package org.bookholder.wording;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.WordTime;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.session.LineNotes;

/**
 * Time within a reading in which no word of the line was heard, longer than a pause: the line may have been begun twice, and both
 * taken for one reading. Immutable.
 */
public final class UnheardTime {
    /**
     * The longest pause within a line, in seconds. Chosen on 483 readings of lines by ten people, of which two held a beginning twice
     * (1.5 and 2.2 s); the longest of the others was 1.1 s.
     */
    private static final double LONGEST_PAUSE = 1.3;

    /** What a word that was not heard takes, at about 170 words a minute. */
    private static final double WORD = 0.35;

    private UnheardTime() {}

    /** The longest such time in {@code attempt}, in words; empty if there is none, or somebody has decided to use the attempt. */
    public static Optional<String> in(ScriptLine line, LineNotes notes, Attempt attempt) {
        return notes.kept() ? Optional.empty() : in(line, attempt);
    }

    private static Optional<String> in(ScriptLine line, Attempt attempt) {
        List<WordTime> words = attempt.words();
        double longest = LONGEST_PAUSE;
        Optional<String> found = Optional.empty();
        for (int i = 1; i < words.size(); i++) {
            WordTime before = words.get(i - 1);
            WordTime after = words.get(i);
            double apart = after.start().since(before.end()).seconds();
            double unheard = apart - WORD * (after.word() - before.word() - 1);
            if (unheard > longest) {
                longest = unheard;
                found = Optional.of(String.format(
                        Locale.ROOT,
                        "%.1f s pass between \u201c%s\u201d and \u201c%s\u201d; part of the line may be there twice",
                        apart,
                        plain(line, before),
                        plain(line, after)));
            }
        }
        return found;
    }

    private static String plain(ScriptLine line, WordTime time) {
        return line.words().get(time.word() - 1).plain();
    }
}
