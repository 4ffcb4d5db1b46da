package org.bookholder.testing;

import static org.junit.jupiter.api.Assertions.fail;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;

/**
 * What a test needs from the machine. A test whose need is not met is skipped with the reason; with {@code
 * BOOKHOLDER_ALL_TESTS=1} in the environment it fails instead, so that a full run cannot pass by skipping.
 */
public final class Needs {
    /** The virtual microphone that a full test run provides. */
    public static final String FAKE_MICROPHONE = "fakemic.monitor";

    private static final boolean ALL = "1".equals(System.getenv("BOOKHOLDER_ALL_TESTS"));

    private Needs() {}

    /** An X display. */
    public static void display() {
        that(!environment("DISPLAY").isEmpty(), "there is no display (DISPLAY is not set)");
    }

    /** A PulseAudio server with the virtual microphone {@value #FAKE_MICROPHONE}. */
    public static void sound() {
        that(!environment("PULSE_SERVER").isEmpty(), "there is no sound server (PULSE_SERVER is not set)");
        that(
                output("pactl", "list", "short", "sources").contains(FAKE_MICROPHONE),
                "the sound server has no source " + FAKE_MICROPHONE);
    }

    /** A file or folder that comes with something installed; {@code from} says with what. */
    public static void file(Path file, String from) {
        that(Files.exists(file), file + " is missing (" + from + ")");
    }

    /** A program on the search path; {@code from} says what it comes with. */
    public static void program(String name, String from) {
        boolean found = false;
        for (String folder : environment("PATH").split(File.pathSeparator, -1)) {
            found |= Files.isExecutable(Path.of(folder, name));
        }
        that(found, "the program " + name + " is missing (" + from + ")");
    }

    /** That file systems can be mounted in a name space of a process's own. */
    public static void mounts() {
        that(mayMount(), "no file system can be mounted (unshare -rm is not allowed here)");
    }

    private static boolean mayMount() {
        try {
            return new ProcessBuilder("unshare", "-rm", "sh", "-c", "mount -t tmpfs none /tmp")
                            .redirectErrorStream(true)
                            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                            .start()
                            .waitFor()
                    == 0;
        } catch (IOException e) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    /** Any other condition; {@code otherwise} says what is missing when it does not hold. */
    public static void that(boolean met, String otherwise) {
        if (ALL && !met) {
            fail("BOOKHOLDER_ALL_TESTS=1, but " + otherwise);
        }
        Assumptions.assumeTrue(met, otherwise);
    }

    private static String environment(String name) {
        String value = System.getenv(name);
        return value == null ? "" : value;
    }

    private static String output(String... command) {
        try {
            Process process = new ProcessBuilder(command)
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            return process.waitFor(10, TimeUnit.SECONDS) && process.exitValue() == 0 ? text : "";
        } catch (IOException e) {
            return "";
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return "";
        }
    }
}
