package org.bookholder.cli;

import java.util.function.Supplier;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.environment.OperationInterrupted;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.Shutdown;

/** Runs a command's work so that Ctrl-C stops it between two steps. Confined to the command's thread. */
final class InterruptibleCommand {
    /** Exit status of an interrupted program, as shells use it: 128 plus the signal's number. */
    static final int STATUS = 130;

    private InterruptibleCommand() {}

    /** Work that can be interrupted. */
    @FunctionalInterface
    interface Work {
        /** Does the work, checking {@code interruption} between steps; returns the exit status. */
        int run(Interruption interruption) throws ProblemException;
    }

    /**
     * Runs work until it is done or interrupted.
     *
     * @param left message after an interruption: what was done and what was not
     */
    static int run(Terminal terminal, String left, Work work) throws ProblemException {
        return run(terminal, () -> left, work);
    }

    /** The same with a message that is asked for when the work has stopped. */
    static int run(Terminal terminal, Supplier<String> left, Work work) throws ProblemException {
        try (Shutdown shutdown = Shutdown.onInterrupt(() -> {})) {
            try {
                return work.run(new Interruption(shutdown::asked));
            } catch (OperationInterrupted e) {
                // Print this before the shutdown continues, or the line would be lost.
                terminal.err().println("bookholder: interrupted; " + left.get());
                terminal.err().flush();
                return STATUS;
            }
        }
    }
}
