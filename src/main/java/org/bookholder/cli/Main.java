package org.bookholder.cli;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Warnings;
import org.bookholder.files.RunFolder;
import org.bookholder.problem.ProblemException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ScopeType;

/**
 * The program.
 *
 * <p>Exit status: 0 for success; 1 for a fault of the program; 2 if the arguments or something outside the program
 * prevented the work, with one line on standard error that says what, where, and what to do; 3 if what was checked must
 * be fixed.
 */
@Command(
        name = "bookholder",
        mixinStandardHelpOptions = true,
        scope = ScopeType.INHERIT,
        versionProvider = Main.Version.class,
        synopsisSubcommandLabel = "COMMAND",
        description = {
            "Follows you while you read a lesson to the camera, and lists the lines to pick up.",
            "",
            "To do it all in a page:  bookholder",
            "To see it work:          bookholder demo",
            "To read your own lesson: bookholder lesson.md",
            "To see its notes again:  bookholder notes FOLDER",
            "To go through it again:  bookholder desk FOLDER",
            "To give it to an editor: bookholder handoff FOLDER",
            "To see a course's state: bookholder course FOLDER",
            "",
            "bookholder COMMAND --help says more about each command.",
            ""
        })
public final class Main implements Callable<Integer> {
    /** What was checked must be fixed. */
    static final int TO_MEND = 3;

    /** Something outside the program prevented the work. */
    static final int NOT_OUR_FAULT = 2;

    /** A fault of the program stopped it. */
    static final int OUR_FAULT = 1;

    private final Environment here;
    private final Terminal terminal;

    @Parameters(
            arity = "0..1",
            paramLabel = "COURSE",
            description = "The folder of a course to open in the page. A lesson's file is read at once.")
    private @Nullable List<Path> courses;

    @Option(names = "--no-browser", description = "Show the page's address and open no browser.")
    private boolean noBrowser;

    private Main(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    /** Runs the program and ends the process. */
    public static void main(String[] args) {
        System.exit(run(Terminal.ofProcess(), args));
    }

    private static int run(Terminal terminal, String... args) {
        try {
            FileNames.check(args);
            RunFolder libraries = NativeFolders.prepare(Machine.cacheFolder(), Machine.temporaryFolder());
            try {
                return run(Machine.environment(), terminal, args);
            } finally {
                libraries.close();
            }
        } catch (ProblemException | IOException | Error e) {
            // Without this an error would end this thread only, and others keep the program running.
            return failed(terminal, e);
        }
    }

    /** Runs the program; returns its exit status. */
    static int run(Environment machine, Terminal terminal, String... args) {
        CommandLine line = commands(machine.warning(new Warnings(terminal::warn)), terminal);
        List<String> named =
                Stream.of(args).filter(arg -> !arg.equals("--no-browser")).toList();
        if (named.size() == 1 && line.getSubcommands().containsKey(named.get(0))) {
            String folder = folder(named.get(0), Path.of(""));
            if (!folder.isEmpty()) {
                terminal.warn("this runs the command" + folder);
            }
        }
        return line.execute(reading(line, args));
    }

    /** The program with all its commands. */
    static CommandLine commands(Environment here, Terminal terminal) {
        CommandLine line = new CommandLine(new Main(here, terminal));
        for (Object command : new Object[] {
            new ReadCommand(here, terminal),
            new NotesCommand(here, terminal),
            new HandOffCommand(here, terminal),
            new FilmCommand(here, terminal),
            new DeskCommand(here, terminal),
            new MatchCommand(here, terminal),
            new LogCommand(here, terminal),
            new DemoCommand(here, terminal),
            new SoundCommand(here, terminal),
            new CheckCommand(here, terminal),
            new SessionsCommand(here, terminal),
            new RepairCommand(here, terminal),
            new PackCommand(here, terminal),
            new UnpackCommand(here, terminal),
            new ScriptCommand(here, terminal),
            new TimeCommand(here, terminal),
            new CourseCommand(here, terminal),
            new PlanCommand(here, terminal),
            new ListsCommand(here, terminal),
            new SummaryCommand(here, terminal),
            new QuotationCommand(here, terminal),
            new VersionsCommand(here, terminal),
            new DayCommand(here, terminal),
            new LimitsCommand(here, terminal)
        }) {
            line.addSubcommand(command);
        }
        line.setOut(terminal.writer());
        line.setCaseInsensitiveEnumValuesAllowed(true);
        line.setParameterExceptionHandler((problem, a) -> wrongArguments(terminal, problem));
        line.setExecutionExceptionHandler((failure, command, result) -> failed(terminal, failure));
        return line;
    }

    /** A lesson's file in place of a command is read: that is what an application is given when a file is opened with it. */
    private static String[] reading(CommandLine line, String... args) {
        boolean lesson = args.length > 0 && !line.getSubcommands().containsKey(args[0]) && new File(args[0]).isFile();
        return lesson ? Stream.concat(Stream.of("read"), Stream.of(args)).toArray(String[]::new) : args;
    }

    @Override
    public Integer call() throws ProblemException, InterruptedException {
        List<Path> given = courses == null ? List.of() : courses;
        Optional<Path> course = given.stream().findFirst();
        if (course.isPresent() && !Files.isDirectory(course.get())) {
            throw new ProblemException(
                    "there is no such command, lesson or course",
                    course.get().toString(),
                    "bookholder --help lists the commands");
        }
        if (given.size() > 1) {
            throw new ProblemException(
                    "the page opens one course at a time", given.get(1).toString(), "leave it out");
        }
        return new HomePage(here, terminal).show(course, !noBrowser);
    }

    private static int wrongArguments(Terminal terminal, ParameterException problem) {
        String name = problem.getCommandLine().getCommandSpec().qualifiedName();
        String message = String.valueOf(problem.getMessage())
                .replaceAll("\\s*\\R\\s*", " ")
                .replace("is not an int", "is not a whole number");
        terminal.err().println("bookholder: " + message + "; " + name + " --help shows what can be given");
        return NOT_OUR_FAULT;
    }

    /** A folder that is called like a command is opened by a longer name. */
    static String folder(String command, Path where) {
        return Files.isDirectory(where.resolve(command))
                ? "; to open the folder '" + command + "' write ./" + command
                : "";
    }

    private static int failed(Terminal terminal, Throwable failure) {
        if (failure instanceof InvalidPathException unnamed) {
            return failed(terminal, FileNames.problem(unnamed.getInput(), unnamed));
        }
        if (failure instanceof ProblemException problem) {
            problem.lines().forEach(terminal::warn);
            return NOT_OUR_FAULT;
        }
        terminal.err().println("bookholder: a fault of the program stopped it; please report what follows");
        failure.printStackTrace(terminal.err());
        return OUR_FAULT;
    }

    /** Reads the version from the jar. */
    static final class Version implements IVersionProvider {
        @Override
        public String[] getVersion() {
            String version = Main.class.getPackage().getImplementationVersion();
            return new String[] {"Bookholder " + (version == null ? "(development)" : version)};
        }
    }
}
