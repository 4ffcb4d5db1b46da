package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Predicate;
import javax.imageio.ImageIO;
import org.bookholder.testing.ChildJvm;
import org.bookholder.testing.Needs;
import org.bookholder.testing.SoundServer;
import org.bookholder.view.cue.Palette;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;

/** The demo's recording played into a microphone and read from there by the program, in real time, to the end. */
@Timeout(value = 240, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Isolated("it follows a microphone in real time, for which a person's machine is theirs")
final class LiveReadingTest {
    private static final Path HOME = Path.of(System.getProperty("bookholder.home"));
    private static final Path MODEL = HOME.resolve("models/vosk-model-en-us");
    private static final Path DEMO = HOME.resolve("demo-scripts");

    /** 48 kHz, 16 bit, one channel. */
    private static final int BYTES_PER_SECOND = 96_000;

    @TempDir
    private Path folder;

    private Program program;

    @BeforeEach
    void find() {
        Needs.file(MODEL.resolve("am/final.mdl"), "mvn compile");
        program = new Program(folder);
    }

    @Test
    void theWindowFollowsTheMicrophone() throws IOException, InterruptedException {
        Needs.display();
        Needs.program("import", "Debian package imagemagick");
        Needs.program("xdotool", "Debian package xdotool");
        try (SoundServer sound = SoundServer.in(folder);
                ChildJvm child = read(sound, "--words", "6")) {
            child.readTo("Session: ");
            waitForNotes(notes -> notes.path("takes").size() == 1);
            Process voice = sound.play(DEMO.resolve("lesson-1.wav"));
            waitForNotes(notes -> outcome(notes, 2).equals("clean"));
            BufferedImage picture = pictureWithSpokenWords(voice);
            voice.destroy();
            // Escape is pressed twice: the first asks, the second confirms.
            run("xdotool", "search", "--sync", "--name", "Reading a bent wheel", "windowfocus", "--sync");
            run("xdotool", "key", "Escape", "key", "Escape");
            assertThat(child.untilItEnds())
                    .contains("Pickup list: Reading a bent wheel", "exit status 0")
                    .noneMatch(line -> line.startsWith("bookholder: "));
            assertThat(share(picture, Palette.COMING)).isGreaterThan(0.002);
            assertThat(share(picture, Palette.SPOKEN)).isGreaterThan(0.0005);
        }
        JsonNode notes = notes();
        assertThat(outcome(notes, 1)).isEqualTo("clean");
        assertThat(notes.at("/sound/lost").asDouble()).isLessThan(0.1);
    }

    @Test
    void aTakeWhoseMicrophoneIsPulledOutGoesOnAndTakesItBack() throws IOException, InterruptedException {
        try (SoundServer sound = SoundServer.in(folder);
                ChildJvm child = read(sound, "--no-window")) {
            child.readTo("Session: ");
            sound.play(DEMO.resolve("lesson-1.wav"));
            child.readTo("welcome to the workshop");
            assertRefusesASecondReader();
            sound.die();
            assertThat(child.readTo("bookholder: "))
                    .contains("No sound comes in (the microphone", "move the text by hand");
            sound.comeBack();
            assertThat(child.readTo("bookholder: ")).contains("all is well again");
            sound.play(DEMO.resolve("lesson-1.wav"));
            waitForNotes(notes -> notes.at("/lines/0/attempts").size() == 2);
            assertThat(child.terminate()).contains("Pickup list: Reading a bent wheel");
        }
        JsonNode notes = notes();
        assertThat(outcome(notes, 1)).isEqualTo("clean");
        assertThat(notes.path("takes")).hasSize(1);
        // All of the one take is in its recording, with silence for what was missed; a header of 44 bytes, times to 1
        // ms.
        double seconds = notes.at("/takes/0/end").asDouble();
        assertThat(folder.resolve("session/take-001.wav").toFile().length())
                .isCloseTo(44 + Math.round(seconds * BYTES_PER_SECOND), within(96L));
    }

    private ChildJvm read(SoundServer sound, String... more) throws IOException {
        List<String> arguments = new ArrayList<>(List.of(
                "read",
                DEMO.resolve("lesson-1.md").toString(),
                "--model",
                MODEL.toString(),
                "--session",
                program.path("session")));
        arguments.addAll(List.of(more));
        return ChildJvm.startWith(sound.environment(), Main.class, arguments.toArray(String[]::new));
    }

    private void assertRefusesASecondReader() throws IOException {
        int status = program.run(
                "read",
                DEMO.resolve("lesson-1.md").toString(),
                "--audio",
                DEMO.resolve("lesson-1.wav").toString(),
                "--no-window",
                "--session",
                program.path("session"));
        assertThat(status).isEqualTo(2);
        assertThat(program.err()).hasLineCount(1).contains("open in another process");
    }

    /** Reads the session, which another process has open, until the condition holds. */
    private void waitForNotes(Predicate<JsonNode> wanted) throws IOException {
        while (program.run("notes", program.path("session"), "--json") != 0
                || !wanted.test(new ObjectMapper().readTree(program.out()))) {
            assertThat(program.err()).matches("|.*nothing was read in this session yet.*\\n");
            LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(500));
        }
    }

    private JsonNode notes() throws IOException {
        assertThat(program.run("notes", program.path("session"), "--json")).isZero();
        return new ObjectMapper().readTree(program.out());
    }

    private static String outcome(JsonNode notes, int line) {
        return notes.path("lines").path(line - 1).path("outcome").asText();
    }

    /** A picture while the voice goes on; just after a direction no spoken word is in sight, so then another one. */
    private static BufferedImage pictureWithSpokenWords(Process voice) throws IOException, InterruptedException {
        BufferedImage picture = picture("live-reading.png");
        while (voice.isAlive() && share(picture, Palette.SPOKEN) < 0.001) {
            LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(500));
            picture = picture("live-reading.png");
        }
        return picture;
    }

    private static BufferedImage picture(String name) throws IOException, InterruptedException {
        Path file = Files.createDirectories(Path.of("target", "pictures")).resolve(name);
        run("import", "-window", "root", file.toString());
        return ImageIO.read(file.toFile());
    }

    private static void run(String... command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command).inheritIO().start();
        assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
    }

    /** The share of the picture's pixels that have exactly this colour. */
    private static double share(BufferedImage picture, int colour) {
        long found = 0;
        for (int y = 0; y < picture.getHeight(); y++) {
            for (int x = 0; x < picture.getWidth(); x++) {
                found += (picture.getRGB(x, y) & 0xffffff) == colour ? 1 : 0;
            }
        }
        return (double) found / ((long) picture.getWidth() * picture.getHeight());
    }
}
