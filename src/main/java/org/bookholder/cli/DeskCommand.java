package org.bookholder.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.bookholder.journal.ReadRightNotes;
import org.bookholder.journal.Replay;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionSummary;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.Past;
import org.bookholder.runtime.Review;
import org.bookholder.runtime.Shutdown;
import org.bookholder.runtime.Workers;
import org.bookholder.script.Script;
import org.bookholder.session.SessionEvent;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Opens the review of a kept session. */
@Command(
        name = "desk",
        sortOptions = false,
        description = {
            "Go through a session again in a browser: hear each attempt, decide what becomes of it, print the list.",
            "Open the address that is shown. Enter or Ctrl-C ends."
        })
final class DeskCommand implements Callable<Integer> {
    private static final long LOOK_MILLIS = 200;

    private final Surroundings here;
    private final Terminal terminal;

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "SESSION",
            description =
                    "The session's folder, or one in which sessions lie: then the newest. Default: the newest of all.")
    private @Nullable Path session;

    @Mixin
    private final DeskOptions options = new DeskOptions();

    DeskCommand(Surroundings here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        Path place = place();
        try (SessionFolder folder = SessionFolder.open(place)) {
            List<SessionEvent> events = folder.journal().events();
            SessionEvent.Opened opened = Replay.firstOpened(events)
                    .orElseThrow(() -> new ProblemException(
                            "nothing was read in this session yet", place.toString(), "name another session"));
            Script script = Lesson.parse(opened.scriptText(), opened.source());
            Past past = Past.of(script, Limits.of(here), events);
            Review review = new Review(folder.journal(), past.state());
            try (Workers workers = new Workers((stage, failure) -> {});
                    Shutdown shutdown = Shutdown.onInterrupt(() -> {});
                    OpenDesk desk =
                            OpenDesk.of(here, options, folder, past.trail(), review.state(), review::tell, false)) {
                workers.takeOn(review);
                terminal.out().println("Session: " + folder.path());
                desk.tell(terminal);
                wait(shutdown);
            }
            // The review's thread has done all that was asked before its crew let it go.
            String course = ReadRightNotes.of(folder.path())
                    .map(ReadRightNotes::course)
                    .orElseGet(() -> ReadRightNotes.courseOf(
                            Path.of(past.state().script().source())));
            new ReadRightNotes(course, review.state().get().remarks().readRight()).keep(folder.path());
        }
        return 0;
    }

    private void wait(Shutdown shutdown) {
        while (!shutdown.asked() && !terminal.entered()) {
            if (shutdown.await(LOOK_MILLIS)) {
                return;
            }
        }
    }

    private Path place() throws ProblemException {
        Path given = session == null ? here.sessions() : session;
        if (SessionFolder.isSession(given)) {
            return given;
        }
        List<SessionSummary> kept = SessionFolder.list(given).stream()
                .filter(s -> s.standing() != SessionSummary.Standing.UNREADABLE)
                .toList();
        if (kept.isEmpty()) {
            throw new ProblemException(
                    "no session lies there",
                    given.toString(),
                    "name a session's folder; bookholder sessions lists them");
        }
        return kept.get(kept.size() - 1).folder();
    }
}
