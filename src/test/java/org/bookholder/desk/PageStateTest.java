package org.bookholder.desk;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.StreamSupport;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.handoff.ExampleSession;
import org.bookholder.session.Decision;
import org.bookholder.session.Remark;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.testing.Golden;
import org.bookholder.testing.Readings;
import org.junit.jupiter.api.Test;

/** What the page is told of a session in which everything happened. */
final class PageStateTest {
    private static final Instant TEN = Instant.parse("2026-03-02T10:00:00Z");

    private final SessionState state = decided();

    @Test
    void theWholeStateIsAsThePageReadsIt() throws JsonProcessingException {
        ObjectNode whole = new ObjectMapper().createObjectNode();
        whole.set("script", StateJson.script(state.script()));
        HandOffStatus written = new HandOffStatus(
                HandOffStatus.Step.WRITTEN, "handoff", List.of(new HandOffStatus.Entry("cut.edl", 712)), "1 file");
        StateJson.parts(state, LiveHistory.NONE.after(state), written).forEach(whole::set);
        whole.set("lines", StateJson.lines(state));
        Golden.assertMatches(
                "desk/whole.json",
                new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsString(whole) + "\n");
    }

    @Test
    void thePickupListHasEachLineThatSomebodyMustLookAt() {
        JsonNode list = PickupListJson.of(state);
        assertThat(StreamSupport.stream(list.spliterator(), false))
                .extracting(line -> line.path("line").asInt())
                .as("misread and decided, skipped, broken off, marked, noted")
                .containsExactly(1, 2, 3, 4, 5);
        assertThat(list.at("/1/text").asText()).startsWith("Count the spokes");
    }

    @Test
    void aCleanLineWithoutANoteIsNotOnThePickupList() {
        JsonNode list = PickupListJson.of(ExampleSession.state());
        assertThat(StreamSupport.stream(list.spliterator(), false))
                .extracting(line -> line.path("line").asInt())
                .doesNotContain(1, 6);
    }

    @Test
    void aRatesUnknownFigureIsNull() {
        JsonNode points = StateJson.points(
                List.of(
                        new LiveHistory.PacePoint(1, 1, 140.6),
                        new LiveHistory.PacePoint(2, 1, Double.NaN),
                        new LiveHistory.PacePoint(3, 1, 150.2)),
                1);
        assertThat(points).hasToString("[[2,1,null],[3,1,150]]");
    }

    @Test
    void theBreakCautionsAreSent() {
        assertThat(StateJson.cautions()).isNotEmpty();
    }

    private static SessionState decided() {
        List<SessionEvent> events = new ArrayList<>(ExampleSession.events());
        events.add(remark(20, new Remark.Decided(2, Decision.Choice.FIX_IN_EDIT, 1, 2)));
        events.add(remark(21, new Remark.Noted(1, "show the picture", false)));
        events.add(remark(22, new Remark.BreakBegan(TEN)));
        return Session.apply(Session.begin(ExampleSession.state().script(), FatigueLimits.defaults()), events);
    }

    private static SessionEvent remark(double at, Remark remark) {
        return new SessionEvent.Remarked(Readings.s(at), remark);
    }
}
