package org.bookholder.testing;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import org.opentest4j.AssertionFailedError;

/** Another user of this machine, who runs programs of their own. */
public final class SecondUser {
    private static final List<String> AS_NOBODY =
            List.of("setpriv", "--reuid=65534", "--regid=65534", "--clear-groups", "--reset-env");

    private SecondUser() {}

    /** Skips a test where no program can be run for another user. */
    public static void needed() throws IOException {
        Needs.program("setpriv", "Debian package util-linux");
        Needs.program("curl", "Debian package curl");
        Object uid = Files.getAttribute(Path.of("/proc/self"), "unix:uid");
        Needs.that(uid.equals(0), "only root can run programs for another user");
    }

    /** What a program of theirs prints, to its end. */
    public static String run(String... command) throws IOException {
        Process process = start(List.of(command));
        return new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }

    private static Process start(List<String> command) throws IOException {
        List<String> whole = new ArrayList<>(AS_NOBODY);
        whole.addAll(command);
        return new ProcessBuilder(whole).redirectErrorStream(true).start();
    }

    /** A program of theirs that listens at a port. */
    public static final class Listening implements AutoCloseable {
        private final Path folder;
        private final Process process;
        private final BufferedReader output;
        private final int port;

        private Listening(Path folder, Process process, BufferedReader output, int port) {
            this.folder = folder;
            this.process = process;
            this.output = output;
            this.port = port;
        }

        /** Where it listens. */
        public int port() {
            return port;
        }

        /** What it was told until a request came whose path holds a text, one line for each request. */
        public List<String> toldUntil(String path) throws IOException {
            List<String> told = new ArrayList<>();
            String line;
            do {
                line = output.readLine();
                if (line == null) {
                    throw new AssertionFailedError("their program has ended after " + told);
                }
                told.add(line);
            } while (!line.contains(path));
            return told;
        }

        @Override
        public void close() throws IOException {
            process.destroyForcibly().onExit().join();
            Folders.delete(folder);
        }
    }

    /** Starts a program of theirs at a port; at any if that is 0. */
    public static Listening listen(int port) throws IOException {
        Path folder = Files.createTempDirectory("second-user");
        Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
        String name = OtherProgram.class.getName().replace('.', '/') + ".class";
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        try (InputStream code = OtherProgram.class.getResourceAsStream("/" + name)) {
            Files.copy(code, file);
        }
        String java = ProcessHandle.current().info().command().orElse("java");
        Process process = start(List.of(
                java, "-Xmx64m", "-cp", folder.toString(), OtherProgram.class.getName(), Integer.toString(port)));
        BufferedReader output = process.inputReader(StandardCharsets.UTF_8);
        String line = output.readLine();
        while (line != null && !line.startsWith("listening at ")) {
            line = output.readLine();
        }
        if (line == null) {
            throw new AssertionFailedError("their program has ended at once");
        }
        return new Listening(folder, process, output, Integer.parseInt(line.substring("listening at ".length())));
    }
}
