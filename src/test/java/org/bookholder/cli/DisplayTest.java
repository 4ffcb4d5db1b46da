package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.bookholder.testing.ChildJvm;
import org.bookholder.testing.Needs;
import org.bookholder.testing.XServer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** Reading where no window can be had: one clear line, and the reading goes on in the terminal to its end. */
@Timeout(120)
@Execution(ExecutionMode.CONCURRENT)
final class DisplayTest {
    private static final Path MODEL = Path.of(System.getProperty("bookholder.home"), "models/vosk-model-en-us");

    @TempDir
    private Path folder;

    @Test
    void withoutADisplayItSaysSoAndReadsOnInTheTerminal() throws IOException, InterruptedException {
        assertReadsOn(Map.of("DISPLAY", "", "WAYLAND_DISPLAY", ""), "there is no display to open it on");
    }

    @Test
    void onADisplayWithoutOpenGlItSaysSoAndReadsOnInTheTerminal() throws IOException, InterruptedException {
        try (XServer server = XServer.start("-extension", "GLX")) {
            assertReadsOn(Map.of("DISPLAY", server.display(), "WAYLAND_DISPLAY", ""), "the display has no OpenGL 3.3");
        }
    }

    @Test
    void whenTheDisplayDiesTheTakeGoesOnInTheTerminalAndEndsInOrder() throws IOException, InterruptedException {
        DemoReading.needed();
        Program program = new Program(folder);
        String session = program.path("session");
        try (XServer server = XServer.start();
                ChildJvm child = DemoReading.startOn(server.display(), session)) {
            String opened = child.readTo(": ");
            while (!opened.startsWith("Desk: ")) {
                // Without OpenGL no window was opened.
                Needs.that(!opened.contains("without a window"), "the display has no OpenGL 3.3");
                opened = child.readTo(": ");
            }
            while (!outcomeOfFirstLine(program, session).equals("clean")) {
                // The window is on show, and the recording is heard in real time; looking costs the other process its
                // time.
                LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(200));
            }
            server.kill();
            child.readTo("bookholder: the display is gone; the reading goes on in the terminal");
            child.readTo("clean       Today we look at one tired wheel");
            assertThat(child.terminate()).contains("Pickup list: Reading a bent wheel");
        }
        assertThat(folder.resolve("session/journal.db-wal")).doesNotExist();
        assertThat(folder.resolve("session/fault.log")).doesNotExist();
        assertThat(outcomeOfFirstLine(program, session)).isEqualTo("clean");
        assertThat(program.err()).isEmpty();
        assertThat(program.run("sessions", folder.toString())).isZero();
        assertThat(program.out()).contains("finished", "1 take");
    }

    /** What the X server does not answer then, a driver that draws in software takes for the size of its picture. */
    @Test
    void aDisplayThatDiesInTheMiddleOfAPictureDoesNotCrashTheProgram() throws IOException, InterruptedException {
        try (XServer server = XServer.start();
                ChildJvm child = ChildJvm.startWith(
                        Map.of("DISPLAY", server.display(), "WAYLAND_DISPLAY", "", "XDG_RUNTIME_DIR", ""),
                        DyingWindow.class,
                        Long.toString(server.process().pid()))) {
            assertThat(child.untilItEnds()).containsExactly("exit status 0");
        }
    }

    private static String outcomeOfFirstLine(Program program, String session) throws IOException {
        // While the take is going on it is not listened to again.
        assertThat(program.run("notes", session, "--json")).as(program.err()).isZero();
        return new ObjectMapper().readTree(program.out()).at("/lines/0/outcome").asText();
    }

    private void assertReadsOn(Map<String, String> environment, String why) throws IOException, InterruptedException {
        Needs.file(MODEL.resolve("am/final.mdl"), "mvn compile");
        Program program = new Program(folder);
        String script = program.file("lesson.md", "Try it on a spoke near the valve first.\n");
        String recording = program.recording("quiet.wav", 1);
        List<String> lines;
        try (ChildJvm child = ChildJvm.startWith(
                environment,
                Main.class,
                "read",
                script,
                "--audio",
                recording,
                "--model",
                MODEL.toString(),
                "--session",
                program.path("session"))) {
            lines = child.untilItEnds();
        }
        assertThat(lines.stream()
                        .filter(line -> line.startsWith("bookholder: "))
                        .toList())
                .singleElement()
                .asString()
                .startsWith("bookholder: reading in the terminal, without a window: ")
                .contains(why);
        assertThat(lines).contains("exit status 0");
        assertThat(String.join("\n", lines)).contains("To see this list again: bookholder notes");
        assertThat(folder.resolve("session/take-001.wav")).isNotEmptyFile();
    }
}
