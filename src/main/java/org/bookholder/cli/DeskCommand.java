package org.bookholder.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.bookholder.app.course.StoredDesk;
import org.bookholder.app.desk.DeskRequest;
import org.bookholder.app.desk.RunningDesk;
import org.bookholder.app.environment.Environment;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.Shutdown;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Opens the review of a stored session. */
@Command(
        name = "desk",
        sortOptions = false,
        description = {
            "Go through a session again in a browser: hear each attempt, decide what becomes of it, print the list; or "
                    + "through all sessions of a course, with its board and its plan.",
            "Open the address that is shown. Enter or Ctrl-C ends."
        })
final class DeskCommand implements Callable<Integer> {
    private static final long LOOK_MILLIS = 200;

    private final Environment here;
    private final Terminal terminal;

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "FOLDER",
            description =
                    "A session's folder; a course's, for its board and all its sessions; or one in which sessions "
                            + "lie; or a lesson's script, for its latest session. Default: the newest session of all.")
    private @Nullable Path session;

    @Mixin
    private final DeskOptions options = new DeskOptions();

    DeskCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        DeskRequest request = options.request();
        try (StoredDesk stored = session == null
                ? StoredDesk.newest(here)
                : StoredDesk.of(here, LatestSession.of(session, here, terminal))) {
            Recovery recovery = new Recovery(here, terminal);
            int interrupted = stored.kind() == StoredDesk.Kind.SESSION
                    ? recovery.settle(stored.folder())
                    : recovery.settleAll(stored.shown());
            if (interrupted != 0) {
                return interrupted;
            }
            try (Shutdown shutdown = Shutdown.onInterrupt(() -> {})) {
                RunningDesk desk = stored.open(request);
                terminal.out().println(label(stored.kind()) + stored.folder());
                DeskOutput.print(desk, terminal);
                wait(shutdown);
            }
        }
        return 0;
    }

    private static String label(StoredDesk.Kind kind) {
        return switch (kind) {
            case SESSION -> "Session: ";
            case COURSE -> "Course: ";
            case SESSIONS -> "Sessions: ";
        };
    }

    private void wait(Shutdown shutdown) {
        while (!shutdown.asked() && !terminal.entered()) {
            if (shutdown.await(LOOK_MILLIS)) {
                return;
            }
        }
    }
}
