package org.bookholder.cli;

import java.nio.file.Path;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.bookholder.app.course.LessonPlace;
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
            "Write what the editor needs of a session, or of all sessions of a lesson as one: which attempt of each line "
                    + "to use and where it lies, as a cut list; captions; the lines to pick up; a log of the takes; and "
                    + "sound.",
            "The files point to the takes' recordings, or into the camera's once 'bookholder match' has found it.",
            "Kinds: pickups, log, captions, edl, otio, cut, listen, takes, sync."
        })
final class HandOffCommand implements Callable<Integer> {
    private final Environment here;
    private final Terminal terminal;

    @Parameters(
            index = "0",
            paramLabel = "SESSION|LESSON",
            description = "The session's folder, or the lesson's script for all its sessions.")
    private @Nullable Path place;

    @Mixin
    private final HandOffOptions options = new HandOffOptions();

    HandOffCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        HandOffRequest request = options.request();
        LessonPlace sessions = LessonPlace.of(Objects.requireNonNull(place), here);
        int interrupted = new Recovery(here, terminal).settleAll(sessions.sessions());
        if (interrupted != 0) {
            return interrupted;
        }
        return HandOffOutput.write(here, request, sessions, terminal, 0);
    }
}
