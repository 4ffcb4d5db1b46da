package org.bookholder.testing;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/** Another JVM with the same class path, for what only another process can show: a kill, a lock, a limit. */
public final class ChildJvm implements AutoCloseable {
    private final Process process;
    private final BufferedReader output;

    ChildJvm(Process process) {
        this.process = process;
        output = process.inputReader(StandardCharsets.UTF_8);
    }

    /** Runs a class with a main method. */
    public static ChildJvm start(Class<?> main, String... arguments) throws IOException {
        return start(java(main, arguments));
    }

    /** The same in a shell that lets no file grow beyond {@code kibibytes}: the writes that go on then fail. */
    public static ChildJvm startWithFileLimit(int kibibytes, Class<?> main, String... arguments) throws IOException {
        List<String> command = new ArrayList<>();
        // bash counts the limit in blocks of 1,024 bytes.
        Collections.addAll(command, "bash", "-c", "ulimit -f " + kibibytes + " && exec \"$@\"", "bash");
        command.addAll(java(main, arguments));
        return start(command);
    }

    /**
     * The same with other variables in its environment, an empty one being taken away; Ctrl-C reaches it, even if this
     * process was started in the background. What it prints as errors is read among its lines.
     */
    public static ChildJvm startWith(Map<String, String> environment, Class<?> main, String... arguments)
            throws IOException {
        List<String> command = new ArrayList<>(List.of("env", "--default-signal=INT"));
        command.addAll(java(main, arguments));
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        environment.forEach((name, value) -> {
            if (value.isEmpty()) {
                builder.environment().remove(name);
            } else {
                builder.environment().put(name, value);
            }
        });
        return new ChildJvm(builder.start());
    }

    /**
     * The same as a program that a person runs: Ctrl-C reaches it, even if this process was started in the background, and its
     * temporary files go to {@code temporary}. What it prints as errors is read among its lines.
     */
    public static ChildJvm startInFront(Path temporary, Class<?> main, String... arguments) throws IOException {
        List<String> command = new ArrayList<>(List.of("env", "--default-signal=INT,HUP"));
        command.addAll(java(main, arguments));
        command.add(command.indexOf("-cp"), "-Djava.io.tmpdir=" + temporary);
        return new ChildJvm(
                new ProcessBuilder(command).redirectErrorStream(true).start());
    }

    /** The same run by a command that sets something up and then becomes the program. */
    public static ChildJvm startBy(List<String> command, Class<?> main, String... arguments) throws IOException {
        List<String> all = new ArrayList<>(command);
        all.addAll(java(main, arguments));
        return new ChildJvm(new ProcessBuilder(all).redirectErrorStream(true).start());
    }

    /** The next line that it printed; null when it has ended. */
    public @Nullable String readLine() throws IOException {
        return output.readLine();
    }

    /** Reads on to the next line with {@code text} in it; that it ends before is a failure. */
    public String readTo(String text) throws IOException {
        List<String> before = new ArrayList<>();
        String line = readLine();
        while (line != null && !line.contains(text)) {
            before.add(line);
            line = readLine();
        }
        assertThat(line).as("a line with '%s' after %s", text, before).isNotNull();
        return String.valueOf(line);
    }

    /** Ends it at once, on Unix with SIGKILL, and returns the whole lines that were left in the pipe. */
    public List<String> kill() throws IOException, InterruptedException {
        // By its handle: Process.destroyForcibly would close the pipe and what is left in it would be lost.
        process.toHandle().destroyForcibly();
        process.waitFor();
        List<String> rest = new ArrayList<>();
        for (String line = readLine(); line != null; line = readLine()) {
            rest.add(line);
        }
        return rest;
    }

    /** Asks it to end, on Unix with SIGTERM, and returns the lines that it still printed. */
    public List<String> terminate() throws IOException, InterruptedException {
        process.toHandle().destroy();
        List<String> rest = new ArrayList<>();
        for (String line = readLine(); line != null; line = readLine()) {
            rest.add(line);
        }
        process.waitFor();
        return rest;
    }

    /** Sends it what Ctrl-C sends, SIGINT; returns the lines that it still printed, and its exit status as the last. */
    public List<String> interrupt() throws IOException, InterruptedException {
        return signal("-INT");
    }

    /** The same with SIGHUP, which a terminal sends when it is closed. */
    public List<String> hangUp() throws IOException, InterruptedException {
        return signal("-HUP");
    }

    private List<String> signal(String name) throws IOException, InterruptedException {
        new ProcessBuilder("kill", name, Long.toString(process.pid())).start().waitFor();
        return untilItEnds();
    }

    /** Waits that long for its end, and says whether that came. */
    public boolean endsWithin(long millis) throws InterruptedException {
        return process.waitFor(millis, TimeUnit.MILLISECONDS);
    }

    /** Takes what it has printed so far and forgets it, so that it need not wait; never waits itself. */
    public void skipOutput() throws IOException {
        while (output.ready()) {
            output.read();
        }
    }

    /** Its resident memory, on Linux. */
    public long residentMegabytes() throws IOException {
        return Files.readAllLines(Path.of("/proc", Long.toString(process.pid()), "status")).stream()
                .filter(line -> line.startsWith("VmRSS:"))
                .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")) / 1024)
                .findFirst()
                .orElse(0);
    }

    /** Tells it to end of its own accord by closing its input, and returns its exit status. */
    public int end() throws IOException, InterruptedException {
        process.getOutputStream().close();
        return process.waitFor();
    }

    /** Waits until it has ended by itself, and returns its lines; its exit status is the last of them. */
    public List<String> untilItEnds() throws IOException, InterruptedException {
        List<String> lines = new ArrayList<>();
        for (String line = readLine(); line != null; line = readLine()) {
            lines.add(line);
        }
        lines.add("exit status " + process.waitFor());
        return lines;
    }

    @Override
    public void close() {
        process.destroyForcibly();
    }

    private static ChildJvm start(List<String> command) throws IOException {
        return new ChildJvm(new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start());
    }

    private static List<String> java(Class<?> main, String... arguments) {
        List<String> command = new ArrayList<>(List.of(ChildClasses.java()));
        Collections.addAll(command, "-Xmx128m", "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1");
        command.addAll(ChildClasses.options());
        command.add(main.getName());
        Collections.addAll(command, arguments);
        return command;
    }
}
