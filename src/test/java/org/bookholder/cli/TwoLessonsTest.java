package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Predicate;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.testing.ChildJvm;
import org.bookholder.testing.Needs;
import org.bookholder.testing.SoundServer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Two lessons from one start, in the real window and from a microphone: nothing of the first is left in the second. */
@Timeout(value = 480, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
final class TwoLessonsTest {
    private static final Path HOME = Path.of(System.getProperty("bookholder.home"));
    private static final Path MODEL = HOME.resolve("models/vosk-model-en-us");
    private static final Path DEMO = HOME.resolve("demo-scripts");
    private static final Duration PATIENCE = Duration.ofMinutes(3);

    @TempDir
    private Path folder;

    @Test
    void theSecondLessonIsFollowedInTheSameWindow() throws IOException, InterruptedException, ProblemException {
        Needs.file(MODEL.resolve("am/final.mdl"), "mvn compile");
        Needs.display();
        Needs.program("import", "Debian package imagemagick");
        Needs.program("xdotool", "Debian package xdotool");
        Program program = new Program(folder);
        String text = Files.readString(DEMO.resolve("lesson-1.md"));
        String first = program.file("first.md", text);
        String second = program.file("second.md", text.replace("title: Reading a bent wheel", "title: Once more"));
        try (SoundServer sound = SoundServer.in(folder);
                ChildJvm child = read(sound, first, second)) {
            String one = session(child);
            Process voice = sound.play(DEMO.resolve("lesson-1.wav"));
            waitForNotes(program, one, notes -> tried(notes, 2));
            voice.destroy();
            run("xdotool", "search", "--sync", "--name", "Reading a bent wheel", "windowfocus", "--sync");
            run("xdotool", "key", "c");
            waitForEnd(one);
            picture("two-lessons-between.png");
            run("xdotool", "key", "Return");
            String two = session(child);
            assertThat(two).isNotEqualTo(one);
            voice = sound.play(DEMO.resolve("lesson-1.wav"));
            waitForNotes(program, two, notes -> tried(notes, 1));
            picture("two-lessons-second.png");
            voice.destroy();
            run("xdotool", "search", "--sync", "--name", "Once more", "windowfocus", "--sync");
            run("xdotool", "key", "Escape", "key", "Escape");
            assertThat(child.untilItEnds())
                    .contains("Pickup list: Once more", "exit status 0")
                    .noneMatch(line -> line.startsWith("bookholder: "));
            JsonNode before = notes(program, one);
            JsonNode after = notes(program, two);
            assertThat(after.path("takes")).hasSize(1);
            assertThat(after.at("/lines/0/attempts")).hasSize(1);
            // The day's clocks go on; the second lesson's own reading began anew.
            assertThat(after.at("/fatigue/reading").asDouble())
                    .isGreaterThan(before.at("/fatigue/reading").asDouble());
        }
    }

    private ChildJvm read(SoundServer sound, String... scripts) throws IOException {
        Map<String, String> environment = new HashMap<>(sound.environment());
        environment.put("XDG_DATA_HOME", folder.resolve("data").toString());
        environment.put("XDG_CONFIG_HOME", folder.resolve("settings").toString());
        return ChildJvm.startWith(
                environment,
                Main.class,
                "read",
                scripts[0],
                scripts[1],
                "--model",
                MODEL.toString(),
                "--no-desk",
                "--words",
                "6");
    }

    private static String session(ChildJvm child) throws IOException, InterruptedException {
        return child.readTo("Session: ").substring("Session: ".length());
    }

    /** Reads the session, which another process has open, until the condition holds. */
    private static void waitForNotes(Program program, String session, Predicate<JsonNode> wanted) throws IOException {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (program.run("notes", session, "--json") != 0
                || !wanted.test(new ObjectMapper().readTree(program.out()))) {
            assertThat(program.err()).matches("|.*nothing was read in this session yet.*\\n");
            assertThat(System.nanoTime() - end)
                    .as(() -> "nanoseconds past patience, where the notes say " + program.out())
                    .isNegative();
            LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(500));
        }
    }

    /** Looks into the journal until the take has ended. */
    private static void waitForEnd(String session) throws IOException, ProblemException {
        boolean ended = false;
        while (!ended) {
            LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(500));
            try (SessionFolder folder = SessionFolder.openForReading(Path.of(session))) {
                ended = folder.events().stream().anyMatch(SessionEvent.TakeSettled.class::isInstance);
            }
        }
    }

    private static JsonNode notes(Program program, String session) throws IOException {
        assertThat(program.run("notes", session, "--json")).isZero();
        return new ObjectMapper().readTree(program.out());
    }

    /** Whether the line has been read; how well doesn't matter here, and a busy machine may lose sound. */
    private static boolean tried(JsonNode notes, int line) {
        return !notes.path("lines").path(line - 1).path("attempts").isEmpty();
    }

    private static void picture(String name) throws IOException, InterruptedException {
        Path file = Files.createDirectories(Path.of("target", "pictures")).resolve(name);
        run("import", "-window", "root", file.toString());
    }

    private static void run(String... command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command).inheritIO().start();
        assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
    }
}
