package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Needs;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** Scripts that might break a recogniser, read with the real one and a recorded voice. */
@Timeout(180)
@Execution(ExecutionMode.CONCURRENT)
final class OddScriptTest {
    private static final Path MODEL = Path.of(System.getProperty("bookholder.home"), "models/vosk-model-en-us");
    private static final String SPOKEN = "Hello, and welcome to the workshop.";
    private static final String FILLER = "Turn the rim slowly and count every spoke near the valve, then rest. ";

    @TempDir
    private Path folder;

    private Program program;
    private String recording;

    @BeforeEach
    void record() throws ProblemException {
        Needs.file(MODEL.resolve("am/final.mdl"), "mvn compile");
        program = new Program(folder);
        program.equipment.hearsForReal();
        recording = DemoVoice.firstLine().write(folder.resolve("voice.wav")).toString();
    }

    @Test
    void fiftyThousandWordsAreFollowed() throws IOException {
        String text = SPOKEN + "\n" + (FILLER.repeat(10) + "\n\n").repeat(385);
        assertThat(text.split("\\s+")).hasSizeGreaterThan(50_000);
        assertThat(read(text)).isZero();
        assertThat(program.err()).isEmpty();
        assertThat(line(0).path("outcome").asText()).isEqualTo("clean");
        assertThat(program.run("notes", program.path("session"))).isZero();
        assertThat(program.out()).contains("No line to pick up.");
    }

    @Test
    void aLineOfTwoThousandWordsIsFollowedAndSaved() throws IOException {
        String words = FILLER.replaceAll("[,.]", "").repeat(154);
        assertThat(words.split(" ")).hasSizeGreaterThan(2_000);
        assertThat(read("---\nlines: as-written\n---\nHello and welcome to the workshop " + words))
                .isZero();
        assertThat(program.err()).isEmpty();
        assertThat(line(0).path("outcome").asText()).isEqualTo("incomplete");
        assertThat(line(0).path("attempts")).hasSize(1);
    }

    @Test
    void aScriptOfOnlyNumbersIsRead() throws IOException {
        assertThat(read("1\n2,500\n1999\n" + SPOKEN)).isZero();
        assertThat(program.err()).isEmpty();
        assertThat(line(3).path("outcome").asText()).isEqualTo("clean");
        assertThat(program.run("notes", program.path("session"))).isZero();
        assertThat(program.out()).contains("3 skipped");
    }

    @Test
    void unknownWordsAreListedWithTheirStandIns() throws IOException {
        assertThat(read("Xylqrt.\nVbrizzt.\n")).isZero();
        assertThat(program.err()).isEmpty();
        assertThat(program.out())
                .contains("Words that the recogniser does not know", "line 1: xylqrt", "line 2: vbrizzt");
        assertThat(line(0).path("attempts")).isEmpty();
    }

    @Test
    void wordsInAnotherWritingSystemAreListed() throws IOException {
        assertThat(read("\u041a\u043e\u043b\u0435\u0441\u043e.\n\u8eca\u8f2a\u3002\n"))
                .isZero();
        assertThat(program.err()).isEmpty();
        assertThat(program.out())
                .contains("line 1: \u043a\u043e\u043b\u0435\u0441\u043e - nothing; give a spoken form");
        assertThat(line(0).path("attempts")).isEmpty();
        // Nothing was followed, but the voice is recorded.
        assertThat(folder.resolve("session/take-001.wav").toFile().length()).isGreaterThan(100_000);
    }

    private int read(String text) {
        return program.run(
                "read",
                program.file("lesson.md", text),
                "--audio",
                recording,
                "--no-window",
                "--unpaced",
                "--model",
                MODEL.toString(),
                "--session",
                program.path("session"));
    }

    private JsonNode line(int index) throws IOException {
        String out = program.out();
        String err = program.err();
        assertThat(program.run("notes", program.path("session"), "--json")).isZero();
        assertThat(out + err).doesNotContain("fault");
        return new ObjectMapper().readTree(program.out()).path("lines").path(index);
    }
}
