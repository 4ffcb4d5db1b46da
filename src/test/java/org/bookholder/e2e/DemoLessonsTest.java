package org.bookholder.e2e;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Direction;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.source.ScriptReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The demo's scripts, as the program reads them. */
final class DemoLessonsTest {
    private static final Path DEMO =
            Path.of(System.getProperty("bookholder.home")).resolve("demo-scripts");

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void eachLessonShowsWhatAScriptMayHold(int number) throws ProblemException {
        Script lesson = lesson(number);
        String text =
                String.join(" ", lesson.lines().stream().map(ScriptLine::text).toList());

        assertThat(text.split(" ").length).as("words written").isBetween(250, 500);
        assertThat(lesson.elements()).anyMatch(Direction.class::isInstance);
        assertThat(text).contains("$", "Wendlebury").containsPattern("\\b\\d+ (mm|cm|PSI)\\b");
        assertThat(text).containsPattern("\\be\\.g\\.|\\bp\\.m\\.");
    }

    @Test
    void theRecordedReadingSaysTheScriptsLines() throws ProblemException, IOException {
        List<ScriptLine> lines = lesson(1).lines();
        JsonNode truth = new ObjectMapper()
                .readTree(Files.readString(DEMO.resolve("lesson-1.reading.json"), StandardCharsets.UTF_8))
                .get("utterances");

        assertThat(lines).hasSize(19);
        for (JsonNode utterance : truth) {
            if (utterance.get("event").asText().equals("clean")) {
                assertThat(spoken(lines.get(utterance.get("line").asInt() - 1)))
                        .isEqualTo(plain(utterance.get("spoken").asText()));
            }
        }
    }

    private static Script lesson(int number) throws ProblemException {
        return ScriptReader.read(DEMO.resolve("lesson-" + number + ".md"));
    }

    private static String spoken(ScriptLine line) {
        return plain(String.join(
                " ",
                line.words().stream()
                        .map(word -> String.join(" ", word.spoken().get(0)))
                        .toList()));
    }

    private static String plain(String text) {
        return text.toLowerCase(Locale.ROOT)
                .replaceAll("[^a-z ]", "")
                .replaceAll(" +", " ")
                .trim();
    }
}
