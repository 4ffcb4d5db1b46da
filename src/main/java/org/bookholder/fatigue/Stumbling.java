package org.bookholder.fatigue;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.follow.model.Attempt;
import org.bookholder.pace.PaceOfLine;
import org.bookholder.timing.StreamTime;
import org.pcollections.HashTreePMap;
import org.pcollections.PMap;

/**
 * Stumbling over the day, by minute of the audio taken on it; at most one entry per minute.
 *
 * <p>The last ten minutes are compared with the day's own first twenty, so that readers are measured against themselves;
 * how often people stumble when reading aloud is not known well enough for a fixed limit.
 *
 * @param minutes for each minute of the day's audio, the attempts that ended in it
 * @param baseline sum of the first twenty minutes
 * @param since from where on the session's audio belongs to the day
 * @param offset the minute of the day in which the session's audio would have begun if all of it belonged to the day
 */
record Stumbling(PMap<Integer, StumbleTally> minutes, StumbleTally baseline, StreamTime since, int offset) {
    /** Nothing read. */
    static final Stumbling NONE = new Stumbling(HashTreePMap.empty(), StumbleTally.NONE, StreamTime.ZERO, 0);

    static final int BASELINE_MINUTES = 20;
    static final int RECENT_MINUTES = 10;

    /** Fewest words for which a rate is given, so that one fluff more or less is not a whole per cent. */
    private static final int FEWEST_WORDS = 100;

    private static final long TICKS_PER_MINUTE = 60L * StreamTime.TICKS_PER_SECOND;

    /** Nothing read on a day that begins at {@code now}. */
    static Stumbling from(StreamTime now) {
        return new Stumbling(HashTreePMap.empty(), StumbleTally.NONE, now, -minuteOf(now));
    }

    /** What was read before on the day that goes on at {@code now}. */
    static Stumbling after(EarlierReading earlier, StreamTime now) {
        PMap<Integer, StumbleTally> minutes = HashTreePMap.empty();
        int first = earlier.minutes() - earlier.recent().size();
        for (int i = 0; i < earlier.recent().size(); i++) {
            minutes = minutes.plus(first + i, earlier.recent().get(i));
        }
        return new Stumbling(minutes, earlier.first(), now, earlier.minutes() - minuteOf(now));
    }

    /** What there is to go on from in another session. */
    EarlierReading earlier(FatigueClocks clocks, StreamTime now) {
        List<StumbleTally> recent = new ArrayList<>();
        for (int back = RECENT_MINUTES - 1; back >= 0; back--) {
            recent.add(at(minute(now) - back));
        }
        return new EarlierReading(clocks, minute(now) + 1, baseline, recent);
    }

    Stumbling plus(Attempt attempt, PaceOfLine pace) {
        if (attempt.end().isBefore(since)) {
            return this;
        }
        StumbleTally tally = StumbleTally.of(attempt, pace);
        int minute = minute(attempt.end());
        return with(minute, at(minute).plus(tally), minute < BASELINE_MINUTES ? baseline.plus(tally) : baseline);
    }

    Stumbling minus(Attempt attempt, PaceOfLine pace) {
        if (attempt.end().isBefore(since)) {
            return this;
        }
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
                tally.equals(StumbleTally.NONE) ? minutes.minus(minute) : minutes.plus(minute, tally),
                newBaseline,
                since,
                offset);
    }

    /** The minute of the day. */
    private int minute(StreamTime time) {
        return offset + minuteOf(time);
    }

    /** The minute of the session's audio. */
    private static int minuteOf(StreamTime time) {
        return (int) (time.ticks() / TICKS_PER_MINUTE);
    }
}
