package org.bookholder.app.environment;

/**
 * Thrown when work was asked to stop. On its way it closes everything that is open; only the code that asked the work
 * to stop may catch it.
 */
public final class OperationInterrupted extends RuntimeException {
    private static final long serialVersionUID = 1L;

    OperationInterrupted() {
        super("the operation was interrupted");
    }
}
