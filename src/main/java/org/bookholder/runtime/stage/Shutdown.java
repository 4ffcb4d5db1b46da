package org.bookholder.runtime.stage;

/**
 * Lets a session end in order when the program is interrupted (Ctrl-C) or asked to terminate: what is to end is asked to,
 * and the Java virtual machine waits until it has.
 */
public final class Shutdown implements AutoCloseable {
    /** Longer than a reading takes to be stopped (30 s) and its stages to let go; nobody should have to kill the program. */
    private static final long PATIENCE_MILLIS = 60_000;

    private final Latest<Boolean> asked = new Latest<>(false);
    private final CompletionLatch finished = new CompletionLatch();
    private final Thread hook;

    private Shutdown(Runnable ask) {
        hook = new Thread(() -> run(ask), "bookholder shutdown");
    }

    /** From now on calls {@code ask}, on a thread of its own, when the program is to end. */
    public static Shutdown onInterrupt(Runnable ask) {
        Shutdown shutdown = new Shutdown(ask);
        Runtime.getRuntime().addShutdownHook(shutdown.hook);
        return shutdown;
    }

    /** Whether the program is to end. */
    public boolean asked() {
        return asked.get();
    }

    /** Waits a while; says whether the thread was interrupted while it did. */
    public boolean await(long millis) {
        return finished.await(millis);
    }

    /** Everything has ended in order. */
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
