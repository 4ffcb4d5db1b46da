package org.bookholder.cli;

import java.nio.file.FileAlreadyExistsException;
import org.bookholder.app.course.LessonPlace;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.handoff.HandOffRequest;
import org.bookholder.app.handoff.HandOffService;
import org.bookholder.problem.ProblemException;

/** Writes a hand-off for a command, and prints what was written. */
final class HandOffOutput {
    private static final String INTERRUPTED = "no file of the hand-off was written or changed";

    private HandOffOutput() {}

    /** Writes the files of a session or lesson; returns {@code status}, or the status of a command that was interrupted. */
    static int write(Environment here, HandOffRequest request, LessonPlace place, Terminal terminal, int status)
            throws ProblemException {
        return InterruptibleCommand.run(terminal, INTERRUPTED, stop -> {
            print(written(here, request, place, stop), terminal);
            place.leftOut(here).forEach(terminal::warn);
            return status;
        });
    }

    /** What can be chosen on a page is an option here. */
    private static HandOffService.Written written(
            Environment here, HandOffRequest request, LessonPlace place, Interruption stop) throws ProblemException {
        try {
            return place.handOff(new HandOffService(here, request, stop));
        } catch (ProblemException e) {
            if (e.getCause() instanceof FileAlreadyExistsException) {
                throw new ProblemException(
                        e.what(),
                        e.where(),
                        "name another folder with --out, or replace what is there with --replace",
                        e);
            }
            throw e;
        }
    }

    private static void print(HandOffService.Written written, Terminal terminal) {
        written.remarks().forEach(terminal::warn);
        terminal.out().println("Cut: " + written.summary());
        written.notes().forEach(terminal.out()::println);
        written.files().forEach(terminal.out()::println);
        terminal.out().flush();
    }
}
