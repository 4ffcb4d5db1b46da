package org.bookholder.fatigue;

import org.bookholder.follow.model.Attempt;
import org.bookholder.pace.PaceOfLine;
import org.bookholder.timing.StreamTime;
import org.pcollections.HashTreePMap;
import org.pcollections.PMap;

/**
 * Stumbling in the session, by minute of its audio; at most one entry per minute.
 *
 * <p>The last ten minutes are compared with the session's own first twenty, so that readers are measured against
 * themselves; how often people stumble when reading aloud is not known well enough for a fixed limit.
 *
 * @param minutes for each minute of audio, the attempts that ended in it
 * @param baseline sum of the first twenty minutes
 */
record Stumbling(PMap<Integer, StumbleTally> minutes, StumbleTally baseline) {
    /** Nothing read. */
    static final Stumbling NONE = new Stumbling(HashTreePMap.empty(), StumbleTally.NONE);

    static final int BASELINE_MINUTES = 20;
    static final int RECENT_MINUTES = 10;

    /** Fewest words for which a rate is given, so that one fluff more or less is not a whole per cent. */
    private static final int FEWEST_WORDS = 100;

    private static final long TICKS_PER_MINUTE = 60L * StreamTime.TICKS_PER_SECOND;

    Stumbling plus(Attempt attempt, PaceOfLine pace) {
        StumbleTally tally = StumbleTally.of(attempt, pace);
        int minute = minute(attempt.end());
        return with(minute, at(minute).plus(tally), minute < BASELINE_MINUTES ? baseline.plus(tally) : baseline);
    }

    Stumbling minus(Attempt attempt, PaceOfLine pace) {
        StumbleTally tally = StumbleTally.of(attempt, pace);
        int minute = minute(attempt.end());
        return with(minute, at(minute).minus(tally), minute < BASELINE_MINUTES ? baseline.minus(tally) : baseline);
    }

    /** The last ten minutes, including the current one. */
    StumbleTally recent(StreamTime now) {
        StumbleTally sum = StumbleTally.NONE;
        for (int back = 0; back < RECENT_MINUTES; back++) {
            sum = sum.plus(at(minute(now) - back));
        }
        return sum;
    }

    /** Fluffs per 100 words over the last ten minutes; NaN if too few words. */
    double recentRate(StreamTime now) {
        return recent(now).perHundred(FEWEST_WORDS);
    }

    /** Fluffs per 100 words over the first twenty minutes; NaN if too few words. */
    double baselineRate() {
        return baseline.perHundred(FEWEST_WORDS);
    }

    /** Whether the last ten minutes lie completely after the first twenty and both contain enough words to compare. */
    boolean comparable(StreamTime now) {
        return minute(now) >= BASELINE_MINUTES + RECENT_MINUTES - 1
                && !Double.isNaN(recentRate(now))
                && !Double.isNaN(baselineRate());
    }

    private StumbleTally at(int minute) {
        StumbleTally tally = minutes.get(minute);
        return tally == null ? StumbleTally.NONE : tally;
    }

    private Stumbling with(int minute, StumbleTally tally, StumbleTally newBaseline) {
        return new Stumbling(
                tally.equals(StumbleTally.NONE) ? minutes.minus(minute) : minutes.plus(minute, tally), newBaseline);
    }

    private static int minute(StreamTime time) {
        return (int) (time.ticks() / TICKS_PER_MINUTE);
    }
}
