package org.bookholder.session;

import java.util.Collection;
import java.util.List;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.pace.PaceOfLine;
import org.bookholder.pace.TakeTime;
import org.bookholder.pace.WordCounts;
import org.bookholder.pace.WordTally;
import org.bookholder.timing.StreamTime;

/**
 * Measures what was read in a take. When the lesson is read to its end, its attempts so far are measured, so that the figure that is
 * shown then is the one that stays when the take is settled.
 *
 * @param counts the script's words
 * @param pause the shortest silence that the articulation rate leaves out
 * @param asides those of the session
 * @param holds those of the session
 */
record TakePace(WordCounts counts, StreamTime pause, Collection<Aside> asides, List<TakeTime.Span> holds) {
    /** The pace of an attempt. */
    PaceOfLine of(Attempt attempt) {
        return PaceOfLine.of(counts.line(attempt.line()), attempt, pause);
    }

    /**
     * The words of a take and the time for them, pauses included.
     *
     * @param attempts all of the take
     */
    WordTally of(int take, List<Attempt> attempts) {
        long words = attempts.stream().mapToLong(a -> of(a).spoken().words()).sum();
        List<Aside> between =
                asides.stream().filter(aside -> aside.take() == take).toList();
        return WordTally.of(words, TakeTime.of(attempts, between, holds));
    }
}
