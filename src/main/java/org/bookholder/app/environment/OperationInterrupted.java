package org.bookholder.app.environment;

/**
 * Leaves work that was asked to stop. It passes through whatever is open, which closes itself; only whoever asked the work to
 * stop may catch it.
 */
public final class OperationInterrupted extends RuntimeException {
    private static final long serialVersionUID = 1L;

    OperationInterrupted() {
        super("the operation was interrupted");
    }
}
