package org.bookholder.testing;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** An X server of a test's own, which it can kill. */
public record XServer(Process process, String display) implements AutoCloseable {
    /** Starts one; {@code more} are further options of Xvfb. */
    public static XServer start(String... more) throws IOException {
        Needs.program("Xvfb", "Debian package xvfb");
        List<String> command =
                new ArrayList<>(List.of("Xvfb", "-displayfd", "1", "-screen", "0", "640x480x24", "-noreset"));
        command.addAll(List.of(more));
        Process process = new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        BufferedReader output = process.inputReader(StandardCharsets.UTF_8);
        return new XServer(process, ":" + output.readLine());
    }

    /** Ends it at once, as a crash does. */
    public void kill() {
        process.destroyForcibly();
    }

    @Override
    public void close() {
        process.destroy();
        process.onExit().join();
    }
}
