package org.bookholder.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.added;
import static org.bookholder.testing.Readings.broken;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.dropped;
import static org.bookholder.testing.Readings.rolled;
import static org.bookholder.testing.Readings.settled;
import static org.bookholder.testing.Readings.swapped;

import java.util.Arrays;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Outcome;
import org.bookholder.testing.Scripts;
import org.bookholder.wording.Pickup;
import org.bookholder.wording.Pickups;
import org.junit.jupiter.api.Test;

/**
 * The rules by which oral reading is scored, at the level of a line's notes: US Department of Education, "Accelerating
 * Student Learning: Monitoring Reading" (Warkomski), and Maryland curriculum-based measurement (Speece). The examples
 * are the former's own.
 */
final class ScoringRulesTest {
    private static Pickup read(String line, Attempt... attempts) {
        SessionState state = Session.apply(Session.begin(Scripts.of(line), FatigueLimits.defaults()), rolled(1, 0));
        state = Session.apply(
                state, Arrays.stream(attempts).map(a -> settled(a)).toList());
        return Pickups.of(state, state.lines().notes(1));
    }

    @Test
    void aWordReadAsAnotherIsAnError() {
        // rule 1: "He will red the book"
        Pickup line = read("He will read the book", complete(1, 1, 1, 5, 0, 2, swapped(3, "read", "red")));
        assertThat(line.outcome()).isEqualTo(Outcome.MISREAD);
        assertThat(line.said()).isEqualTo("“red” for “read”");
    }

    @Test
    void anOmissionIsAnError() {
        // rule 7: "Mario climbed the tree."
        Pickup line = read("Mario climbed the oak tree.", complete(1, 1, 1, 5, 0, 2, dropped(4, "oak")));
        assertThat(line.outcome()).isEqualTo(Outcome.MISREAD);
        assertThat(line.said()).isEqualTo("“oak” left out");
    }

    @Test
    void aSelfCorrectionWithinTheAttemptIsNotAnError() {
        // rule 2: "The river was could ... cold" counts as read; following settles it without a deviation
        Pickup line = read("The river was cold", complete(1, 1, 1, 4, 0, 4));
        assertThat(line.outcome()).isEqualTo(Outcome.CLEAN);
        assertThat(line.said()).isEmpty();
    }

    @Test
    void aRepetitionFromTheStartLeavesTheCleanAttemptAsTheBest() {
        // Speece: a repetition is not an error
        Pickup line = read("The river was cold", broken(1, 1, 1, 2, 0, 1), complete(1, 2, 1, 4, 1, 3));
        assertThat(line.outcome()).isEqualTo(Outcome.CLEAN);
        assertThat(line.attempts()).isEqualTo(2);
    }

    @Test
    void eachOfTwoTransposedWordsIsAnError() {
        // rule 9: "Charlie quickly ran."
        Pickup line = read(
                "Charlie ran quickly.",
                complete(1, 1, 1, 3, 0, 2, swapped(2, "ran", "quickly"), swapped(3, "quickly", "ran")));
        assertThat(line.outcome()).isEqualTo(Outcome.MISREAD);
        assertThat(line.said()).isEqualTo("“quickly ran” for “ran quickly”");
    }

    @Test
    void anAddedContentWordIsReportedAsAdded() {
        // schemes differ: Speece does not count an insertion, others do; a lesson is to be said as written
        Pickup line = read("The river was cold", complete(1, 1, 1, 4, 0, 2, added(4, "very")));
        assertThat(line.outcome()).isEqualTo(Outcome.MISREAD);
        assertThat(line.said()).isEqualTo("“very” added");
    }

    @Test
    void aLineThatWasSkippedIsOnePickup() {
        // Speece: in a skipped line each word is an error; for a pickup list that is one line
        Pickup line = read("The river was cold");
        assertThat(line.outcome()).isEqualTo(Outcome.SKIPPED);
        assertThat(line.said()).isEqualTo("not read");
    }
}
