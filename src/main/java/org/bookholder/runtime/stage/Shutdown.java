package org.bookholder.runtime.stage;

/**
 * Ends a session in an orderly way when the program is interrupted (Ctrl-C) or asked to terminate: it asks the work to
 * end, and the Java virtual machine waits until it has.
 */
public final class Shutdown implements AutoCloseable {
    /** Longer than it takes to stop a reading (30 s) and end its stages; nobody should have to kill the program. */
    private static final long PATIENCE_MILLIS = 60_000;

    private final Latest<Boolean> asked = new Latest<>(false);
    private final CompletionLatch finished = new CompletionLatch();
    private final Thread hook;

    private Shutdown(Runnable ask) {
        hook = new Thread(() -> run(ask), "bookholder shutdown");
    }

    /** Registers {@code ask}, which is called on its own thread when the program should end. */
    public static Shutdown onInterrupt(Runnable ask) {
        Shutdown shutdown = new Shutdown(ask);
        Runtime.getRuntime().addShutdownHook(shutdown.hook);
        return shutdown;
    }

    /** Whether the program should end. */
    public boolean asked() {
        return asked.get();
    }

    /** Waits a while; returns whether the thread was interrupted meanwhile. */
    public boolean await(long millis) {
        return finished.await(millis);
    }

    /** Call when everything has ended. */
    @Override
    public void close() {
        finished.come();
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException shuttingDown) {
            asked.set(true);
        }
    }

    private void run(Runnable ask) {
        asked.set(true);
        ask.run();
        finished.await(PATIENCE_MILLIS);
    }
}
