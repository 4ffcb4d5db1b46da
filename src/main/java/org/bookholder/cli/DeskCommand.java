package org.bookholder.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.bookholder.desk.DeskShelf;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionSummary;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.Shutdown;
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
        try (OpenReview review = OpenReview.of(here, place);
                Shutdown shutdown = Shutdown.onInterrupt(() -> {});
                OpenDesk desk = OpenDesk.of(here, options, place, DeskShelf.of(review.place()))) {
            terminal.out().println("Session: " + place);
            desk.tell(terminal);
            wait(shutdown);
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
