package org.bookholder.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Warnings;
import org.bookholder.journal.SessionLocks;
import org.bookholder.runtime.stage.Helpers;
import org.bookholder.testing.FakeClock;
import org.bookholder.testing.FakeEquipment;
import org.bookholder.testing.Wav;

/** The program on a test machine, with everything it prints. */
final class Program {
    static final int RATE = 16_000;

    final FakeEquipment equipment = new FakeEquipment();
    private final FakeClock clock = new FakeClock();
    private final Path folder;
    private String typed = "";
    private String out = "";
    private String err = "";

    Program(Path folder) {
        this.folder = folder;
    }

    /** Time passes between two commands. */
    void pass(Duration time) {
        clock.pass(time);
    }

    /** Time of day. */
    Instant now() {
        return clock.instant();
    }

    /** Somebody types this. */
    void types(String text) {
        typed = text;
    }

    int run(String... arguments) {
        ByteArrayOutputStream outBytes = new ByteArrayOutputStream();
        ByteArrayOutputStream errBytes = new ByteArrayOutputStream();
        Terminal terminal = new Terminal(
                new PrintStream(outBytes, true, StandardCharsets.UTF_8),
                new PrintStream(errBytes, true, StandardCharsets.UTF_8),
                new ByteArrayInputStream(typed.getBytes(StandardCharsets.UTF_8)),
                StandardCharsets.UTF_8);
        Environment here = new Environment(
                clock,
                clock,
                ZoneOffset.UTC,
                folder,
                folder.resolve("data"),
                folder.resolve("settings"),
                new SessionLocks(),
                new Warnings(line -> {}),
                new Helpers(1),
                equipment);
        int status = Main.run(here, terminal, arguments);
        out = outBytes.toString(StandardCharsets.UTF_8);
        err = errBytes.toString(StandardCharsets.UTF_8);
        return status;
    }

    /** Reads a recording into a session, as fast as it can be read and without a window. */
    int read(String script, String recording, String session) {
        return run("read", script, "--audio", recording, "--no-window", "--unpaced", "--session", session);
    }

    String out() {
        return out;
    }

    String err() {
        return err;
    }

    /** Writes a text file; returns its name. */
    String file(String name, String text) {
        try {
            return Files.writeString(folder.resolve(name), text, StandardCharsets.UTF_8)
                    .toString();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Writes a quiet recording; returns its name. */
    String recording(String name, double seconds) {
        return Wav.write(folder.resolve(name), RATE, Wav.sine(200, 0.01, RATE, seconds))
                .toString();
    }

    String path(String name) {
        return folder.resolve(name).toString();
    }
}
