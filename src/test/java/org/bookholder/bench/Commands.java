package org.bookholder.bench;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Runs the program as users do, in its own process, and measures the time. */
final class Commands {
    private Commands() {}

    /**
     * The result of a command.
     *
     * @param seconds from the process's start to its end
     * @param status its exit status
     */
    record Run(double seconds, int status) {}

    /** Runs a command; what it prints goes into {@code out}. */
    static Run run(Path out, String... arguments) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(program());
        command.addAll(List.of(arguments));
        long begun = System.nanoTime();
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(out.toFile())
                .start();
        int status = process.waitFor();
        return new Run((System.nanoTime() - begun) / 1e9, status);
    }

    /** The command that starts the program, with the settings of the Java virtual machine that this one has. */
    static List<String> program() {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        ManagementFactory.getRuntimeMXBean().getInputArguments().stream()
                .filter(option -> option.startsWith("-X"))
                .forEach(command::add);
        command.addAll(List.of(
                "-Dbookholder.home=" + System.getProperty("bookholder.home", ""),
                "-cp",
                System.getProperty("java.class.path"),
                "org.bookholder.cli.Main"));
        return command;
    }
}
