package org.bookholder.cli;

import java.nio.file.Path;
import java.util.List;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.ProgressMeter;
import org.bookholder.app.session.Overflows;
import org.bookholder.app.session.SessionSettler;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;

/**
 * Settles what a kill left unsettled before a session is shown or continued, and reports it. If that fails, the reason
 * is printed and the session is shown as it is.
 */
final class Recovery {
    /** Message after an interruption. */
    static final String INTERRUPTED = "the take that was being listened to stays as it was";

    private final Environment here;
    private final Terminal terminal;

    Recovery(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    /**
     * Settles a session, unless somebody has it open.
     *
     * @return 0, or the exit status of a program that was interrupted
     * @throws ProblemException if there is no readable session there
     */
    int settle(Path place) throws ProblemException {
        return settle(place, "");
    }

    /** Settles several sessions one after another; stops at an interruption. */
    int settleAll(List<Path> places) throws ProblemException {
        int interrupted = 0;
        for (Path place : places) {
            if (interrupted == 0) {
                interrupted = settle(place, place + ": ");
            }
        }
        return interrupted;
    }

    private int settle(Path place, String name) throws ProblemException {
        try {
            Overflows.takeIn(here, place).forEach(sentence -> terminal.warn(name + sentence));
        } catch (ProblemException e) {
            if (!SessionFolder.isSession(place)) {
                throw e;
            }
            terminal.warn(name.isEmpty() ? e.getMessage() : name + e.what() + "; " + e.remedy());
            return 0;
        }
        List<Integer> takes = SessionSettler.unsettled(here, place);
        if (takes.isEmpty()) {
            return 0;
        }
        terminal.warn(name + SessionSettler.announcement(takes));
        return InterruptibleCommand.run(terminal, INTERRUPTED, stop -> {
            try (ProgressBar bar = new ProgressBar(terminal.err(), Terminal.console(), here.nanoTime())) {
                ProgressMeter meter = new ProgressMeter(here.nanoTime(), bar::show);
                SessionSettler.settle(here, place, (take, heard, length) -> {
                            stop.check();
                            meter.reached(
                                    "listening again to take " + take, heard.seconds() / Math.max(length.seconds(), 1));
                        })
                        .forEach(terminal::warn);
            } catch (ProblemException e) {
                terminal.warn(SessionSettler.failure(e));
            }
            return 0;
        });
    }
}
