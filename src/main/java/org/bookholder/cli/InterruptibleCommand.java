package org.bookholder.cli;

import org.bookholder.app.environment.Interruption;
import org.bookholder.app.environment.OperationInterrupted;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.Shutdown;

/** Runs a command's work so that Ctrl-C stops it between two of its steps. Confined to the command's thread. */
final class InterruptibleCommand {
    /** What shells report of a program that was interrupted: 128 and the signal's number. */
    static final int STATUS = 130;

    private InterruptibleCommand() {}

    /** What can be interrupted. */
    @FunctionalInterface
    interface Work {
        /** Does it, and asks {@code interruption} between its steps; returns the exit status. */
        int run(Interruption interruption) throws ProblemException;
    }

    /**
     * Does work until it is done or interrupted.
     *
     * @param left what is said when it was interrupted: what became of what it was to do
     */
    static int run(Terminal terminal, String left, Work work) throws ProblemException {
        try (Shutdown shutdown = Shutdown.onInterrupt(() -> {})) {
            try {
                return work.run(new Interruption(shutdown::asked));
            } catch (OperationInterrupted e) {
                // Before the shutdown is let go on, or the line would be lost.
                terminal.err().println("bookholder: interrupted; " + left);
                terminal.err().flush();
                return STATUS;
            }
        }
    }
}
