package org.bookholder.fatigue;

import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Outcome;
import org.bookholder.pace.PaceOfLine;
import org.bookholder.pace.WordTally;

/**
 * Words read, and how often the reader stumbled. A fluff is an attempt that was misread or broken off, whether or not
 * the line was then restarted.
 *
 * @param spoken words read, and their time
 * @param fluffs number of attempts that were fluffs
 */
public record StumbleTally(WordTally spoken, long fluffs) {
    static final StumbleTally NONE = new StumbleTally(WordTally.NONE, 0);

    static StumbleTally of(Attempt attempt, PaceOfLine pace) {
        return new StumbleTally(pace.spoken(), attempt.outcome() == Outcome.CLEAN ? 0 : 1);
    }

    StumbleTally plus(StumbleTally other) {
        return new StumbleTally(spoken.plus(other.spoken), fluffs + other.fluffs);
    }

    StumbleTally minus(StumbleTally other) {
        return new StumbleTally(spoken.minus(other.spoken), fluffs - other.fluffs);
    }

    /** Fluffs per 100 words; NaN below {@code fewest} words. */
    double perHundred(long fewest) {
        return spoken.words() < fewest ? Double.NaN : 100.0 * fluffs / spoken.words();
    }
}
