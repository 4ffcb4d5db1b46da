package org.bookholder.session;

import java.util.List;
import java.util.Optional;
import org.bookholder.follow.Attempt;
import org.bookholder.follow.Outcome;

/**
 * What is known of one line.
 *
 * @param line line number, from 1
 * @param outcome that of the best attempt; skipped if there is none
 * @param reached whether the reading came to it or past it
 * @param attempts in order of time
 * @param best the last complete and clean attempt; where none is clean, the last complete one
 * @param marks notes of people who marked it as a pickup by hand
 */
public record LineNotes(
        int line,
        Outcome outcome,
        boolean reached,
        List<Attempt> attempts,
        Optional<Attempt> best,
        List<String> marks) {
    /** Copies the lists. */
    public LineNotes {
        attempts = List.copyOf(attempts);
        marks = List.copyOf(marks);
    }

    /** Whether the line is to be recorded again. */
    public boolean pickup() {
        return reached && (outcome != Outcome.CLEAN || !marks.isEmpty());
    }
}
