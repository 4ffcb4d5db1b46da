package org.bookholder.session;

import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.fatigue.FatigueLog;
import org.bookholder.pace.PaceLog;
import org.bookholder.pace.PaceRules;
import org.bookholder.pace.WordCounts;
import org.bookholder.script.model.Script;

/**
 * Running sums, so that the cost of an event does not grow with the script or the session.
 *
 * @param counts the script's words
 * @param pace sums for the pace
 * @param fatigue sums for the fatigue report
 * @param spent how long the session took
 * @param heard what was heard of all lines, without people's decisions
 * @param unjudged what the program failed to judge
 * @param revision number of events applied
 */
record Accumulators(
        WordCounts counts,
        PaceLog pace,
        FatigueLog fatigue,
        TimeSpent spent,
        LineIndex heard,
        UnjudgedLines unjudged,
        long revision) {
    static Accumulators begin(Script script, PaceRules rules, FatigueLimits limits) {
        WordCounts counts = WordCounts.of(script);
        return new Accumulators(
                counts,
                PaceLog.begin(rules),
                FatigueLog.begin(limits),
                TimeSpent.NONE,
                LineIndex.blank(counts.lines()),
                UnjudgedLines.NONE,
                0);
    }
}
