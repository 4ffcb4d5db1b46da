package org.bookholder.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.bookholder.app.delivery.DeliveryProfiles;
import org.bookholder.app.delivery.ExportCheckService;
import org.bookholder.app.delivery.ExportJob;
import org.bookholder.app.delivery.FilmTextFiles;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.reading.OptionalEars;
import org.bookholder.delivery.CheckJson;
import org.bookholder.delivery.CheckReport;
import org.bookholder.delivery.CheckText;
import org.bookholder.delivery.Finding.Grade;
import org.bookholder.delivery.Profile;
import org.bookholder.delivery.ProfileForm;
import org.bookholder.handoff.captions.FilmTexts;
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
            "Check exported films before they go out: the file, picture and sound against a delivery profile, and the"
                    + " words against the script.",
            "It looks for the script with the same name as the film: in the course, next to the film, or one folder up."
                    + " Or name it with --script. The result is kept beside each film. Exit status 3 if anything must"
                    + " be mended."
        })
final class CheckCommand implements Callable<Integer> {
    private final Environment here;
    private final Terminal terminal;

    @Parameters(arity = "0..*", paramLabel = "FILE", description = "Exported films.")
    private @Nullable List<Path> films;

    @Option(
            names = "--profile",
            paramLabel = "FILE",
            description = "What the films have to be. Default: the course's, or yours.")
    private @Nullable Path profile;

    @Option(names = "--show-profile", description = "Show the profile, as it can be edited, and do no more.")
    private boolean showProfile;

    @Option(names = "--script", paramLabel = "FILE", description = "The script of the film.")
    private @Nullable Path script;

    @Option(names = "--no-words", description = "Leave the words unchecked.")
    private boolean noWords;

    @Option(
            names = "--captions",
            description =
                    "Write what is said in each film into a folder 'captions' beside it, in the film's time: WebVTT, "
                            + "SubRip, a transcript, and chapters if the script has headings.")
    private boolean captions;

    @Option(names = "--json", description = "The results as JSON, for other programs.")
    private boolean json;

    @Option(names = "--model", paramLabel = "FOLDER", description = "Use this speech model (Vosk).")
    private @Nullable Path model;

    CheckCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        if (showProfile) {
            Profile shown = profile == null ? DeliveryProfiles.usual(here) : DeliveryProfiles.read(profile, here);
            terminal.out().println("# What an exported film has to be. What is left out is not checked.");
            terminal.out()
                    .println(
                            "# Where no source is named, the figure is common practice of sites that take such films.");
            terminal.out().println("# To set your own, save these lines as " + here.delivery() + " and change them.");
            ProfileForm.lines(shown).forEach(terminal.out()::println);
            return 0;
        }
        if (films == null || films.isEmpty()) {
            throw new ProblemException(
                    "no film was named", "FILE", "name one or more, as in: bookholder check lesson-1.mp4");
        }
        if (script != null && (films.size() > 1 || noWords)) {
            throw new ProblemException("a script is for one film", "--script", "name one film, without --no-words");
        }
        if (captions && noWords) {
            throw new ProblemException("captions need the words", "--captions", "leave --no-words out");
        }
        ExportJob.Choices choices = new ExportJob.Choices(
                Optional.ofNullable(profile), DeliveryProfiles.usual(here), Optional.ofNullable(script), !noWords);
        List<ExportJob> jobs = new ArrayList<>();
        for (Path film : films) {
            jobs.add(ExportJob.of(film, choices, here));
        }
        return InterruptibleCommand.run(
                terminal, "the film that was being checked has no new result", stop -> check(jobs, stop));
    }

    private int check(List<ExportJob> jobs, Interruption stop) throws ProblemException {
        boolean words = jobs.stream().anyMatch(job -> job.lesson().isPresent());
        List<CheckReport> reports = new ArrayList<>();
        try (OptionalEars ears = OptionalEars.load(here, model == null ? here.model() : model, words)) {
            for (ExportJob job : jobs) {
                try {
                    reports.add(checked(job, ears.ears(), stop));
                } catch (ProblemException e) {
                    // The other films are still checked.
                    terminal.warn(e.getMessage());
                }
            }
        }
        if (json) {
            terminal.out().print(CheckJson.of(reports));
            terminal.out().flush();
        }
        boolean mend = reports.stream().anyMatch(report -> report.count(Grade.MEND) > 0);
        return reports.size() < jobs.size() ? Main.NOT_OUR_FAULT : mend ? Main.TO_MEND : 0;
    }

    private CheckReport checked(ExportJob job, Optional<Ears> ears, Interruption stop) throws ProblemException {
        CheckReport report;
        List<FilmTexts> heard = new ArrayList<>();
        try (ProgressBar bar = new ProgressBar(terminal.err(), Terminal.console(), here.nanoTime())) {
            report = new ExportCheckService(here, bar::show, stop).check(job, ears, heard::add);
        }
        ExportCheckService.keep(job, report).ifPresent(terminal::warn);
        if (!json) {
            CheckText.of(report).forEach(terminal.out()::println);
            terminal.out().println();
            terminal.out().flush();
        }
        if (captions) {
            writeCaptions(job, heard);
        }
        return report;
    }

    private void writeCaptions(ExportJob job, List<FilmTexts> heard) throws ProblemException {
        if (heard.isEmpty()) {
            terminal.warn(job.film() + ": no line of a script was heard in it, so it has no captions");
        }
        for (FilmTexts texts : heard) {
            for (Path file : FilmTextFiles.write(job.film(), texts)) {
                if (json) {
                    terminal.warn(file.toString());
                } else {
                    terminal.out().println(file);
                }
            }
        }
        terminal.out().flush();
    }
}
