package org.bookholder.cli;

import java.nio.file.Path;
import java.util.List;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.OperationInterrupted;
import org.bookholder.app.reading.LessonSequence;
import org.bookholder.app.reading.ReadingRequest;
import org.bookholder.app.reading.ReadingResult;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.Shutdown;

/** Runs readings from the command line; Enter and Ctrl-C end them in an orderly way. */
final class TerminalReading {
    private TerminalReading() {}

    /** Says how the lesson at a place of the order is to be read. */
    @FunctionalInterface
    interface Requests {
        ReadingRequest at(int place) throws ProblemException;
    }

    /** Runs one reading and prints its progress, more of it if {@code verbose}; returns the exit status. */
    static int run(Environment here, Terminal terminal, ReadingRequest request, boolean verbose)
            throws ProblemException {
        return run(here, terminal, List.of(request.script()), request.speakers(), place -> request, verbose);
    }

    /** The same for lessons that are read one after another. */
    static int run(
            Environment here,
            Terminal terminal,
            List<Path> lessons,
            List<String> speakers,
            Requests requests,
            boolean verbose)
            throws ProblemException {
        ReadingPrinter printer = new ReadingPrinter(here, terminal, verbose);
        Printing printing = new Printing(printer, speakers, requests);
        try (Shutdown shutdown = Shutdown.onInterrupt(() -> {})) {
            try {
                new LessonSequence(here, lessons, printing).read(printer, new TerminalControl(shutdown, terminal));
                return printing.status;
            } catch (OperationInterrupted e) {
                // Print this before the shutdown continues, or the line would be lost.
                terminal.warn("interrupted; " + printer.interrupted());
                terminal.err().flush();
                return InterruptibleCommand.STATUS;
            }
        }
    }

    /** Prints what came of each reading, and keeps the worst exit status. */
    private static final class Printing implements LessonSequence.Guide {
        private final ReadingPrinter printer;
        private final List<String> speakers;
        private final Requests requests;
        private int status;

        Printing(ReadingPrinter printer, List<String> speakers, Requests requests) {
            this.printer = printer;
            this.speakers = speakers;
            this.requests = requests;
        }

        @Override
        public ReadingRequest request(int place) throws ProblemException {
            return requests.at(place);
        }

        @Override
        public List<String> speakers() {
            return speakers;
        }

        @Override
        public void ended(ReadingResult result) {
            int own = printer.finished(result);
            status = status == 0 ? own : status;
        }
    }
}
