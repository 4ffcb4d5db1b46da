package org.bookholder.handoff;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.cli.Installed;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Decision.Choice;
import org.bookholder.session.Remark;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.testing.JsonSchemas;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;
import org.bookholder.timing.Timecode;
import org.junit.jupiter.api.Test;

/** What a producer decides and notes at the desk reaches the editor in every file. */
final class DecidedLinesTest {
    private static final String FIX = "fix in the edit, line 2, misread: \u201cfolks\u201d for \u201cspokes\u201d; "
            + "\u201cdown\u201d left out; \u201creally\u201d added; take the word from take 2 "
            + "(Count the spokes \"twice\", and write \u2026)";

    /** The example's session, in which line 2 is to be mended and line 1 to be read again; line 5 has a note. */
    private static HandOff decided() {
        List<SessionEvent> events = new ArrayList<>(ExampleSession.events());
        for (Remark remark : List.of(
                new Remark.Decided(2, Choice.FIX_IN_EDIT, 1, 2),
                new Remark.Noted(2, "take the word from take 2", false),
                new Remark.Decided(1, Choice.RECORD_AGAIN, 0, 0),
                new Remark.Decided(3, Choice.FIX_IN_EDIT, 0, 0),
                new Remark.Noted(5, "quiet", false))) {
            events.add(new SessionEvent.Remarked(StreamTime.ofSeconds(18), remark));
        }
        SessionState begun = Session.begin(ExampleSession.state().script(), FatigueLimits.defaults());
        SessionState state = Session.apply(begun, events);
        return ExampleHandOff.of(state, events, List.of(), new Timecode(FrameRate.FPS_25, false));
    }

    @Test
    void theDecisionListMarksThem() throws Exception {
        String edl = file("lesson.edl");
        assertThat(edl)
                .contains("LOC: 01:00:03:02 ORANGE")
                .contains(" ORANGE  "
                        + FIX.replace('\u201c', '"').replace('\u201d', '"').replace("\u2026", "..."))
                .contains(" RED     pickup, line 1, record again (Every wheel begins with its hub.)")
                .contains(" RED     pickup, line 5, clean; a door slammed; quiet (Rest your hands.)")
                .contains(" ORANGE  fix in the edit, line 3, skipped: not read (Then lace the first side.)")
                .doesNotContain("pickup, line 2");
    }

    @Test
    void theTimelineMarksThemWhereTheLineBegins() throws Exception {
        JsonNode audio = json(file("lesson.otio")).at("/tracks/children/0/children");
        List<JsonNode> markers = new ArrayList<>();
        audio.forEach(item -> item.path("markers").forEach(markers::add));
        JsonNode fix = markers.stream()
                .filter(m -> m.path("comment").asText().equals(FIX))
                .findFirst()
                .orElseThrow();
        assertThat(fix.path("name").asText()).isEqualTo("fix");
        assertThat(fix.path("color").asText()).isEqualTo("ORANGE");
        // Line 2 was begun 4 s into the take, at 25 frames a second; the recording is counted from nine o'clock.
        double atNine = 9 * 3600 * 25;
        assertThat(fix.at("/marked_range/start_time/value").asDouble() - atNine).isEqualTo(100);
    }

    @Test
    void theLogSaysWhatWasDecidedOnTheAttempt() throws Exception {
        assertThat(file("lesson-log.csv").lines().filter(row -> row.startsWith("attempt,1,2,")))
                .singleElement()
                .asString()
                .contains("misread,yes,")
                .contains("fix in the edit; take the word from take 2");
    }

    @Test
    void theJsonListsThemAndKeepsToItsSchema() throws Exception {
        JsonNode json = json(file("lesson-pickups.json"));
        assertThat(json.path("fixes"))
                .extracting(row -> row.path("line").asInt())
                .containsExactly(2, 3);
        assertThat(json.at("/fixes/0/decision").asText()).isEqualTo("fix in the edit");
        assertThat(json.at("/fixes/0/notes/0").asText()).isEqualTo("take the word from take 2");
        assertThat(json.path("pickups"))
                .extracting(row -> row.path("line").asInt())
                .containsExactly(1, 4, 5);
        assertThat(JsonSchemas.violations(file("pickups.schema.json"), json.toString()))
                .isEmpty();
    }

    @Test
    void theNotesListThem() throws Exception {
        StringBuilder out = new StringBuilder();
        new NotesJsonExporter().write(decided().state(), List.of(), out);
        JsonNode lines = json(out.toString()).path("lines");
        assertThat(lines.at("/1/decision/choice").asText()).isEqualTo("fix in the edit");
        assertThat(lines.at("/1/decision/take").asInt()).isEqualTo(1);
        assertThat(lines.at("/1/decision/attempt").asInt()).isEqualTo(2);
        assertThat(lines.at("/1/notes/0").asText()).isEqualTo("take the word from take 2");
        assertThat(lines.at("/3/decision").isNull()).isTrue();

        StringBuilder list = new StringBuilder();
        new PickupListExporter(ZoneOffset.UTC).write(decided().state(), List.of(), list);
        assertThat(list.toString()).containsSubsequence("To fix in the edit:", "    2  misread", "take the word");
    }

    private static String file(String name) throws IOException, ProblemException {
        HandOff handOff = decided();
        for (HandOffPart part : Installed.handOffParts()) {
            for (HandOffFile file : part.files(handOff)) {
                if (file.name().equals(name)) {
                    ByteArrayOutputStream out = new ByteArrayOutputStream();
                    file.content().write(out);
                    return out.toString(StandardCharsets.UTF_8);
                }
            }
        }
        throw new AssertionError("no part writes " + name);
    }

    private static JsonNode json(String text) throws IOException {
        return new ObjectMapper().readTree(text);
    }
}
