package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.bookholder.testing.ChildJvm;
import org.bookholder.testing.Needs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Reading where no window can be had: one clear line, and the reading goes on in the terminal to its end. */
@Timeout(120)
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
        Needs.program("Xvfb", "Debian package xvfb");
        Process server = new ProcessBuilder(
                        "Xvfb", "-displayfd", "1", "-screen", "0", "640x480x24", "-extension", "GLX", "-noreset")
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        try {
            BufferedReader output = server.inputReader(StandardCharsets.UTF_8);
            String display = ":" + output.readLine();
            assertReadsOn(Map.of("DISPLAY", display, "WAYLAND_DISPLAY", ""), "the display has no OpenGL 3.3");
        } finally {
            server.destroy();
            assertThat(server.waitFor(10, TimeUnit.SECONDS)).isTrue();
        }
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
