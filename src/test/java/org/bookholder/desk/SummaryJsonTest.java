package org.bookholder.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.broken;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.cut;
import static org.bookholder.testing.Readings.rolled;
import static org.bookholder.testing.Readings.s;
import static org.bookholder.testing.Readings.swapped;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Attempt;
import org.bookholder.session.Decision;
import org.bookholder.session.Remark;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

/** The summary of a session of lines of ten words, each read in five seconds. */
final class SummaryJsonTest {
    private static final int LINES = 26;

    private final List<Attempt> attempts = new ArrayList<>();
    private final List<SessionEvent> after = new ArrayList<>();

    @Test
    void aSessionIsDividedIntoStretchesOfAHundredWords() {
        read(1, LINES);
        JsonNode plot = summary().path("stretches");
        assertThat(plot).hasSize(3);
        assertThat(plot.get(0))
                .hasToString(
                        "{\"from\":0.000,\"to\":50.000,\"first\":1,\"last\":10,\"words\":100,\"fluffs\":0,\"rate\":0.0}");
        assertThat(plot.get(2))
                .hasToString(
                        "{\"from\":100.000,\"to\":130.000,\"first\":21,\"last\":26,\"words\":60,\"fluffs\":0,\"rate\":0.0}");
    }

    @Test
    void theBestAndTheHardestStretchAreThoseWithFewestAndMostFluffs() {
        read(1, 4);
        misread(5);
        read(6, 10);
        for (int line = 11; line <= 20; line++) {
            misread(line);
        }
        read(21, LINES);
        JsonNode summary = summary();
        assertThat(summary.at("/best/first").asInt()).isEqualTo(21);
        assertThat(summary.at("/hardest/first").asInt()).isEqualTo(11);
        assertThat(summary.at("/hardest/fluffs").asInt()).isEqualTo(10);
        assertThat(summary.at("/stretches/0/rate").asDouble()).isEqualTo(1);
        assertThat(summary.path("first_clean").asInt()).isEqualTo(15);
        assertThat(summary.path("open").asInt()).isEqualTo(11);
    }

    @Test
    void aShortRestIsNoStretchToCompare() {
        read(1, 14);
        JsonNode summary = summary();
        assertThat(summary.path("stretches")).hasSize(2);
        assertThat(summary.has("best")).isFalse();
        assertThat(summary.has("hardest")).isFalse();
    }

    @Test
    void aRestOfHalfAHundredWordsIsCompared() {
        read(1, 15);
        assertThat(summary().at("/best/first").asInt()).isEqualTo(1);
    }

    @Test
    void aLineThatTookASecondTryWasNotCleanAtFirst() {
        attempts.add(broken(1, 1, 1, 3, 0, 2));
        attempts.add(complete(1, 2, 1, 10, 2, 7));
        JsonNode summary = summary();
        assertThat(summary.path("first_clean").asInt()).isZero();
        assertThat(summary.at("/stretches/0/fluffs").asInt()).isEqualTo(1);
    }

    @Test
    void aBrokenOffStartWithoutWordsHasNoRate() {
        attempts.add(new Attempt(1, 1, 1, s(0), s(1), false, List.of(), List.of()));
        assertThat(summary().at("/stretches/0/rate").isNull()).isTrue();
    }

    @Test
    void decidedLinesAreCounted() {
        read(1, 3);
        after.add(new SessionEvent.Remarked(s(200), new Remark.Decided(2, Decision.Choice.KEEP, 1, 2)));
        assertThat(summary().path("decided").asInt()).isEqualTo(1);
    }

    private void read(int from, int to) {
        for (int line = from; line <= to; line++) {
            attempts.add(complete(1, attempts.size() + 1, line, 10, 5 * line - 5, 5 * line));
        }
    }

    private void misread(int line) {
        attempts.add(complete(1, attempts.size() + 1, line, 10, 5 * line - 5, 5 * line, swapped(3, "one", "another")));
    }

    private JsonNode summary() {
        List<SessionEvent> events = new ArrayList<>(List.of(rolled(1, 0), cut(1, 190)));
        events.add(new SessionEvent.TakeSettled(s(190), 1, attempts, List.of()));
        events.addAll(after);
        return SummaryJson.of(
                Session.apply(Session.begin(Scripts.sized(120, LINES, 10), FatigueLimits.defaults()), events));
    }
}
