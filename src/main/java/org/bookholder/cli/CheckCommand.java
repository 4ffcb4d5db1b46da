package org.bookholder.cli;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.bookholder.delivery.CheckJson;
import org.bookholder.delivery.CheckReport;
import org.bookholder.delivery.CheckText;
import org.bookholder.delivery.Finding.Grade;
import org.bookholder.delivery.Profile;
import org.bookholder.delivery.ProfileText;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.Ears;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Checks exported films. */
@Command(
        name = "check",
        sortOptions = false,
        description = {
            "Check exported films before they go out: the file, picture and sound against a delivery profile, and the words "
                    + "against the script.",
            "The script is the one of the same name beside the film or in the folder above, unless one is named. The result "
                    + "is kept beside each film. Exit status 3 if anything must be mended."
        })
final class CheckCommand implements Callable<Integer> {
    private final Surroundings here;
    private final Terminal terminal;

    @Parameters(arity = "0..*", paramLabel = "FILE", description = "Exported films.")
    private @Nullable List<Path> films;

    @Option(names = "--profile", paramLabel = "FILE", description = "What the films have to be. Default: see below.")
    private @Nullable Path profile;

    @Option(names = "--show-profile", description = "Show the profile, as it can be edited, and do no more.")
    private boolean showProfile;

    @Option(names = "--script", paramLabel = "FILE", description = "The script of the film.")
    private @Nullable Path script;

    @Option(names = "--no-words", description = "Leave the words unchecked.")
    private boolean noWords;

    @Option(names = "--json", description = "The results as JSON, for other programs.")
    private boolean json;

    @Option(names = "--model", paramLabel = "FOLDER", description = "Use this speech model (Vosk).")
    private @Nullable Path model;

    CheckCommand(Surroundings here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        Profile wanted = profile();
        if (showProfile) {
            terminal.out().println("# What an exported film has to be. What is left out is not checked.");
            terminal.out().println("# To set your own, save these lines as " + here.delivery() + " and change them.");
            ProfileText.of(wanted).forEach(terminal.out()::println);
            return 0;
        }
        if (films == null || films.isEmpty()) {
            throw new ProblemException(
                    "no film was named", "FILE", "name one or more, as in: bookholder check lesson-1.mp4");
        }
        if (script != null && (films.size() > 1 || noWords)) {
            throw new ProblemException("a script is for one film", "--script", "name one film, without --no-words");
        }
        return check(films, wanted);
    }

    private int check(List<Path> named, Profile wanted) throws ProblemException {
        List<Optional<Lesson>> lessons = new ArrayList<>();
        for (Path film : named) {
            lessons.add(lesson(film));
        }
        boolean words = lessons.stream().anyMatch(Optional::isPresent);
        List<CheckReport> reports = new ArrayList<>();
        boolean unreadable = false;
        try (OptionalEars ears = OptionalEars.load(here, model == null ? here.model() : model, words)) {
            CheckRun run = new CheckRun(here, terminal, wanted);
            for (int i = 0; i < named.size(); i++) {
                try {
                    reports.add(checked(run, named.get(i), lessons.get(i), ears.ears()));
                } catch (ProblemException e) {
                    // The others are checked all the same.
                    unreadable = true;
                    terminal.err().println("bookholder: " + e.getMessage());
                }
            }
        }
        if (json) {
            terminal.out().print(CheckJson.of(reports));
            terminal.out().flush();
        }
        boolean mend = reports.stream().anyMatch(report -> report.count(Grade.MEND) > 0);
        return unreadable ? Main.NOT_OUR_FAULT : mend ? Main.TO_MEND : 0;
    }

    private CheckReport checked(CheckRun run, Path film, Optional<Lesson> lesson, Optional<Ears> ears)
            throws ProblemException {
        CheckReport report = run.check(film, lesson, ears);
        run.keep(film, report);
        if (!json) {
            CheckText.of(report).forEach(terminal.out()::println);
            terminal.out().println();
            terminal.out().flush();
        }
        return report;
    }

    private Optional<Lesson> lesson(Path film) throws ProblemException {
        Optional<Path> found = script != null ? Optional.of(script) : noWords ? Optional.empty() : ExportScript.of(film);
        return found.isEmpty() ? Optional.empty() : Optional.of(Lesson.read(found.get()));
    }

    private Profile profile() throws ProblemException {
        Path file = profile != null ? profile : here.delivery();
        if (profile == null && Files.notExists(file)) {
            return ProfileText.usual();
        }
        try {
            return ProfileText.parse(Files.readString(file), file.toString());
        } catch (CharacterCodingException e) {
            throw new ProblemException("this is not UTF-8 text", file.toString(), "save it as UTF-8", e);
        } catch (IOException e) {
            throw new ProblemException(
                    "the profile cannot be read", file.toString(), "name a file that is there and that you may read", e);
        }
    }
}
