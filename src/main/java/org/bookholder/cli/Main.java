package org.bookholder.cli;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import org.bookholder.problem.ProblemException;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;

/** The program's entry: exit status 0 = done, 2 = bad arguments or input, 1 = a fault of the program. */
@Command(
        name = "bookholder",
        mixinStandardHelpOptions = true,
        versionProvider = Main.Version.class,
        description = {
            "Follows you while you read a lesson to a camera, and lists the lines to pick up.",
            "",
            "Start with:  bookholder demo",
            "Your own:    bookholder read lesson.md"
        },
        subcommands = {ReadCommand.class, NotesCommand.class, SessionsCommand.class, DemoCommand.class})
public final class Main implements Runnable {
    private static final int BAD_INPUT = 2;
    private static final int FAULT = 1;

    private Main() {}

    /** Runs the program and ends the Java virtual machine with its exit status. */
    public static void main(String[] args) {
        System.setOut(new PrintStream(System.out, true, StandardCharsets.UTF_8));
        System.setErr(new PrintStream(System.err, true, StandardCharsets.UTF_8));
        Locale.setDefault(Locale.ROOT);
        System.exit(run(args));
    }

    /** Runs the program; returns its exit status. */
    static int run(String... args) {
        return new CommandLine(new Main())
                .setCaseInsensitiveEnumValuesAllowed(true)
                .setParameterExceptionHandler((e, a) -> {
                    e.getCommandLine().getErr().println("bookholder: " + oneLine(e) + "; see bookholder --help");
                    return BAD_INPUT;
                })
                .setExecutionExceptionHandler((e, commandLine, result) -> {
                    if (e instanceof ProblemException) {
                        commandLine.getErr().println("bookholder: " + oneLine(e));
                        return BAD_INPUT;
                    }
                    commandLine.getErr().println("bookholder: a fault of the program: " + e);
                    e.printStackTrace(commandLine.getErr());
                    return FAULT;
                })
                .execute(args);
    }

    private static String oneLine(Exception e) {
        return String.valueOf(e.getMessage()).replaceAll("\\s*\\R\\s*", " ");
    }

    /** Without a command, tells what there is. */
    @Override
    public void run() {
        CommandLine.usage(this, System.out);
    }

    /** The version that the build wrote into the program's archive. */
    static final class Version implements IVersionProvider {
        @Override
        public String[] getVersion() {
            String version = Main.class.getPackage().getImplementationVersion();
            return new String[] {"bookholder " + (version == null ? "(built from source)" : version)};
        }
    }
}
