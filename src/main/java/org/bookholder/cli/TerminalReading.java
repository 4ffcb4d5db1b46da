package org.bookholder.cli;

import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.OperationInterrupted;
import org.bookholder.app.reading.ReadingRequest;
import org.bookholder.app.reading.ReadingService;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.Shutdown;

/** Runs a reading from the command line; Enter and Ctrl-C end it in an orderly way. */
final class TerminalReading {
    private TerminalReading() {}

    /** Runs the reading and prints its progress, more of it if {@code verbose}; returns the exit status. */
    static int run(Environment here, Terminal terminal, ReadingRequest request, boolean verbose)
            throws ProblemException {
        ReadingPrinter printer = new ReadingPrinter(here, terminal, verbose);
        try (Shutdown shutdown = Shutdown.onInterrupt(() -> {})) {
            try {
                return printer.finished(
                        new ReadingService(here, request, printer, new TerminalControl(shutdown, terminal)).read());
            } catch (OperationInterrupted e) {
                // Print this before the shutdown continues, or the line would be lost.
                terminal.warn("interrupted; " + printer.interrupted());
                terminal.err().flush();
                return InterruptibleCommand.STATUS;
            }
        }
    }
}
