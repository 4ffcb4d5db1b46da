package org.bookholder.app.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.cut;
import static org.bookholder.testing.Readings.rolled;
import static org.bookholder.testing.Readings.settled;
import static org.bookholder.testing.Readings.swapped;

import java.util.List;
import java.util.Map;
import org.bookholder.cutlist.CutRules;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Attempt;
import org.bookholder.script.model.Script;
import org.bookholder.session.Decision.Choice;
import org.bookholder.session.Remark;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

/** From which session a line is taken. */
final class ChosenReadingsTest {
    private static final Script LESSON = Scripts.of("Spring comes early.");

    private static final SessionState CLEAN = read(complete(1, 1, 1, 3, 1, 2));
    private static final SessionState MISREAD = read(complete(1, 1, 1, 3, 1, 2, swapped(2, "comes", "came")));

    private static SessionState read(Attempt attempt) {
        return Session.apply(
                Session.begin(LESSON, FatigueLimits.defaults()), List.of(rolled(1, 0), settled(attempt), cut(1, 4)));
    }

    private static SessionState rejected(SessionState state) {
        return Session.apply(
                state, new SessionEvent.Remarked(state.now(), new Remark.Decided(1, Choice.RECORD_AGAIN, 0, 0)));
    }

    private static ChosenReadings of(SessionState first, boolean filmed, SessionState second, boolean filmedToo) {
        return ChosenReadings.of(
                List.of(
                        new ChosenReadings.Reading(first, Map.of(1, 1), filmed),
                        new ChosenReadings.Reading(second, Map.of(1, 1), filmedToo)),
                CutRules.defaults());
    }

    @Test
    void theLastCleanReadingIsUsedAndOfEquallyGoodOnesTheFilmedOne() {
        assertThat(of(CLEAN, false, CLEAN, false).sessions()).containsEntry(1, 1);
        assertThat(of(CLEAN, false, MISREAD, true).sessions()).containsEntry(1, 0);
        ChosenReadings filmed = of(CLEAN, true, CLEAN, false);
        assertThat(filmed.sessions()).containsEntry(1, 0);
        assertThat(filmed.passedOver()).containsExactly(1);
    }

    @Test
    void aReadingThatSomebodyWantsAgainGivesWayToACleanOne() {
        assertThat(of(rejected(CLEAN), true, CLEAN, false).sessions()).containsEntry(1, 1);
        assertThat(of(CLEAN, false, rejected(CLEAN), false).sessions()).containsEntry(1, 0);
    }
}
