package org.bookholder.cli;

import java.nio.file.Path;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.handoff.HandOffRequest;
import org.bookholder.problem.ProblemException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Writes the files for the editor. */
@Command(
        name = "handoff",
        sortOptions = false,
        description = {
            "Write what the editor needs of a session: which attempt of each line to use and where it lies, as a cut "
                    + "list; captions; the lines to pick up; a log of the takes; and sound.",
            "The files point to the takes' recordings, or into the camera's once 'bookholder match' has found it.",
            "Kinds: pickups, log, captions, edl, otio, cut, listen, takes, sync."
        })
final class HandOffCommand implements Callable<Integer> {
    private final Environment here;
    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "SESSION", description = "The session's folder.")
    private @Nullable Path session;

    @Mixin
    private final HandOffOptions options = new HandOffOptions();

    HandOffCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        HandOffRequest request = options.request();
        Path place = Objects.requireNonNull(session);
        int interrupted = new Recovery(here, terminal).settle(place);
        if (interrupted != 0) {
            return interrupted;
        }
        return HandOffOutput.write(here, request, place, terminal, 0);
    }
}
