package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.bookholder.testing.ChildJvm;
import org.bookholder.testing.Needs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The demo's recording played into a microphone, in real time, and read by the program from there. */
@Timeout(180)
final class MicrophoneReadingTest {
    private static final Path HOME = Path.of(System.getProperty("bookholder.home"));
    private static final Path MODEL = HOME.resolve("models/vosk-model-en-us");
    private static final Path DEMO = HOME.resolve("demo-scripts");

    @TempDir
    private Path folder;

    @Test
    void followsAVoiceThroughTheMicrophoneAndKeepsItsSound() throws IOException, InterruptedException {
        Needs.sound();
        Needs.program("paplay", "Debian package pulseaudio-utils");
        Needs.file(MODEL.resolve("am/final.mdl"), "mvn compile");
        Program program = new Program(folder);
        try (ChildJvm child = read(program)) {
            child.readTo("Session: ");
            Process voice = new ProcessBuilder(
                            "paplay",
                            "--device=fakemic",
                            DEMO.resolve("lesson-1.wav").toString())
                    .inheritIO()
                    .start();
            child.readTo("Today we look at one tired wheel");
            voice.destroy();
            assertThat(voice.waitFor(10, TimeUnit.SECONDS)).isTrue();
            assertThat(child.terminate()).contains("Pickup list: Reading a bent wheel");
        }
        assertThat(program.run("notes", program.path("session"), "--json")).isZero();
        JsonNode notes = new ObjectMapper().readTree(program.out());
        assertThat(notes.at("/lines/0/outcome").asText()).isEqualTo("clean");
        assertThat(notes.at("/lines/1/outcome").asText()).isEqualTo("clean");
        assertThat(notes.at("/sound/lost").asDouble()).isLessThan(0.1);
        double seconds = notes.at("/takes/0/end").asDouble();
        // One channel of 16 bit at the rate in which microphones are recorded, 48 kHz, behind a header of 44 bytes;
        // times are to 1 ms.
        assertThat(folder.resolve("session/take-001.wav").toFile().length())
                .isCloseTo(44 + Math.round(seconds * 96_000), within(96L));
    }

    private static ChildJvm read(Program program) throws IOException {
        return ChildJvm.start(
                Main.class,
                "read",
                DEMO.resolve("lesson-1.md").toString(),
                "--no-window",
                "--model",
                MODEL.toString(),
                "--session",
                program.path("session"));
    }
}
