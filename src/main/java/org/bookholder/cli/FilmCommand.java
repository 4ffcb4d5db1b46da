package org.bookholder.cli;

import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.bookholder.app.course.LessonPlace;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.film.FilmJson;
import org.bookholder.app.film.FilmObstacle;
import org.bookholder.app.film.FilmObstacle.Told;
import org.bookholder.app.film.FilmRequest;
import org.bookholder.app.film.FilmResult;
import org.bookholder.app.film.FilmService;
import org.bookholder.app.film.FilmText;
import org.bookholder.delivery.CheckReport;
import org.bookholder.delivery.CheckText;
import org.bookholder.delivery.Finding.Grade;
import org.bookholder.film.plan.FilmPlanner;
import org.bookholder.problem.ProblemException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Makes films. */
@Command(
        name = "film",
        sortOptions = false,
        description = {
            "Make the film of a lesson: the last good attempt of each line from the matched camera, cut in the quiet"
                    + " between, with the recorder's sound if there is one, at the loudness and in the size that the"
                    + " delivery profile asks for.",
            "Match the footage first: bookholder match SESSION FILE... The film goes into the course's exports under"
                    + " the lesson's name, captions and text beside it, and replaces nothing; a draft goes into the"
                    + " session and replaces the draft before it. A finished film is checked; exit status 3 if"
                    + " anything must be mended."
        })
final class FilmCommand implements Callable<Integer> {
    private final Environment here;
    private final Terminal terminal;

    @Parameters(
            index = "0",
            paramLabel = "SESSION|LESSON",
            description = "The session's folder, or the lesson's script for all its sessions.")
    private @Nullable Path place;

    @Option(names = "--out", paramLabel = "FILE", description = "Where the film goes.")
    private @Nullable Path out;

    @Option(
            names = "--draft",
            description =
                    "Make a small one quickly, with the numbers of the lines in the picture and a card for each line"
                            + " that there is nothing to use for.")
    private boolean draft;

    @Option(
            names = "--leave-out",
            paramLabel = "LINE",
            split = ",",
            description =
                    "Leave these lines out on purpose, of this film and of later ones: it is noted in the session, and"
                            + " can be undone on the film's page.")
    private @Nullable List<Integer> leaveOut;

    @Option(names = "--as-shot", description = "Never frame closer to hide a cut.")
    private boolean asShot;

    @Option(names = "--title", description = "Begin with a card that says the lesson's title.")
    private boolean title;

    @Option(names = "--cameras", description = "Change the camera at joins, where several show a line.")
    private boolean cameras;

    @Option(names = "--enlarge", description = "Blow a small picture up to the size that the profile asks for.")
    private boolean enlarge;

    @Option(
            names = "--profile",
            paramLabel = "FILE",
            description = "What the film has to be. Default: the course's, or yours.")
    private @Nullable Path profile;

    @Option(names = "--no-check", description = "Leave the finished film unchecked.")
    private boolean noCheck;

    @Option(names = "--anew", description = "Make a finished film again though nothing has changed since the last one.")
    private boolean anew;

    @Option(names = "--json", description = "The result as JSON, for other programs.")
    private boolean json;

    FilmCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        FilmRequest request = new FilmRequest(
                Objects.requireNonNull(place),
                Optional.ofNullable(out),
                draft,
                leaveOut == null ? new LinkedHashSet<>() : new LinkedHashSet<>(leaveOut),
                !asShot,
                enlarge,
                Optional.ofNullable(profile),
                !noCheck,
                anew,
                new FilmPlanner.Wishes(title, cameras));
        Making making = new Making(request);
        return InterruptibleCommand.run(terminal, making::ifStopped, making::make);
    }

    /** Says before a draft is made what stands in the way of the film. */
    private void inTheWay(FilmObstacle obstacle) {
        terminal.warn("in the way of the finished film: "
                + obstacle.ofDraft(Told.TERMINAL).getMessage());
    }

    /** One run of the command. */
    private final class Making {
        private final FilmRequest request;
        private Optional<FilmService> service = Optional.empty();

        Making(FilmRequest request) {
            this.request = request;
        }

        String ifStopped() {
            return service.map(FilmService::ifStopped).orElse("no film was made");
        }

        int make(Interruption stop) throws ProblemException {
            LessonPlace sessions = LessonPlace.of(request.place(), here);
            int interrupted = new Recovery(here, terminal).settleAll(sessions.sessions());
            if (interrupted != 0) {
                return interrupted;
            }
            stop.check();
            FilmResult result;
            try (ProgressBar bar = new ProgressBar(terminal.err(), Terminal.console(), here.nanoTime())) {
                FilmService making = new FilmService(here, request, bar::show, stop);
                service = Optional.of(making);
                result = making.make(Told.TERMINAL, FilmCommand.this::inTheWay);
            }
            return told(result);
        }
    }

    private int told(FilmResult result) {
        Optional<CheckReport> check = result.check();
        if (json) {
            terminal.out().print(FilmJson.of(result));
        } else {
            terminal.out().println("Film: " + result.made().file());
            terminal.out().println(FilmText.said(result));
            if (result.already()) {
                terminal.out().println("With --anew it is made again.");
            }
            FilmText.of(result).forEach(terminal.out()::println);
            check.ifPresent(report -> CheckText.of(report).forEach(terminal.out()::println));
        }
        terminal.out().flush();
        return check.filter(report -> report.count(Grade.MEND) > 0).isPresent() ? Main.TO_MEND : 0;
    }
}
