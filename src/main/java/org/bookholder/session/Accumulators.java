package org.bookholder.session;

import java.time.Instant;
import java.util.Optional;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.fatigue.FatigueLog;
import org.bookholder.pace.PaceLog;
import org.bookholder.pace.PaceRules;
import org.bookholder.pace.TakeTime.Span;
import org.bookholder.pace.WordCounts;
import org.bookholder.script.model.Script;
import org.bookholder.timing.StreamTime;
import org.pcollections.PVector;
import org.pcollections.TreePVector;

/**
 * What a state keeps to be able to go on, so that an event costs the same however long the session.
 *
 * @param counts the script's words
 * @param pace sums for the pace
 * @param fatigue sums for the fatigue report
 * @param book the notes of all lines
 * @param begun whether reading has begun in the take
 * @param holds the holds that are over
 * @param heldSince when the hold that is going on began
 * @param cut time of day at which the last take was cut
 * @param sourceTrouble what is wrong with the microphone
 * @param recordingTrouble what is wrong with the recording
 * @param remarks what people have added
 * @param revision how many events were applied
 */
record Accumulators(
        WordCounts counts,
        PaceLog pace,
        FatigueLog fatigue,
        LineIndex book,
        boolean begun,
        PVector<Span> holds,
        StreamTime heldSince,
        Optional<Instant> cut,
        String sourceTrouble,
        String recordingTrouble,
        Remarks remarks,
        long revision) {
    static Accumulators begin(Script script, PaceRules rules, FatigueLimits limits) {
        WordCounts counts = WordCounts.of(script);
        return new Accumulators(
                counts,
                PaceLog.begin(rules),
                FatigueLog.begin(limits),
                LineIndex.blank(counts.lines()),
                false,
                TreePVector.empty(),
                StreamTime.ZERO,
                Optional.empty(),
                "",
                "",
                Remarks.NONE,
                0);
    }
}
