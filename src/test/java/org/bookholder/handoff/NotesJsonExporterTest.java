package org.bookholder.handoff;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import org.junit.jupiter.api.Test;

final class NotesJsonExporterTest extends ExporterContract {
    @Override
    Exporter exporter() {
        return new NotesJsonExporter();
    }

    @Test
    void isOneObjectInWhichEachLineHasItsOutcomeAttemptsAndBest() throws IOException {
        StringBuilder out = new StringBuilder();
        exporter().write(ExampleSession.state(), ExampleSession.events(), out);
        JsonNode notes = new ObjectMapper().readTree(out.toString());
        assertThat(notes.path("lines").findValuesAsText("outcome"))
                .containsExactly("clean", "misread", "skipped", "incomplete", "clean", "skipped");
        assertThat(notes.at("/lines/1/words/0/word").asText()).isEqualTo("spokes");
        assertThat(notes.at("/lines/1/words/0/said").asText()).isEqualTo("folks");
        assertThat(notes.at("/lines/1/words/0/kind").asText()).isEqualTo("swapped");
        assertThat(notes.at("/lines/2/best").isNull()).isTrue();
        assertThat(notes.at("/lines/3/attempts/0/complete").asBoolean()).isFalse();
        assertThat(notes.at("/lines/4/best/start").asDouble()).isEqualTo(14);
        assertThat(notes.at("/asides/0/said").asText()).isEqualTo("was that the post");
        assertThat(notes.path("pace").isObject()).isTrue();
        assertThat(notes.path("fatigue").isObject()).isTrue();
        assertThat(notes.path("sound").isObject()).isTrue();
    }
}
