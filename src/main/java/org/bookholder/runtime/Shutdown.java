package org.bookholder.runtime;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * Lets a session end in order when the program is interrupted (Ctrl-C) or asked to terminate: what is to end is asked to,
 * and the Java virtual machine waits until it has.
 */
public final class Shutdown implements AutoCloseable {
    /** However long the end takes, nobody should have to kill the program to get rid of it. */
    private static final long PATIENCE_SECONDS = 120;

    private final Latest<Boolean> asked = new Latest<>(false);
    private final CountDownLatch finished = new CountDownLatch(1);
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
        try {
            return finished.await(millis, TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return true;
        }
    }

    /** Everything has ended in order. */
    @Override
    public void close() {
        finished.countDown();
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException shuttingDown) {
            asked.set(true);
        }
    }

    private void run(Runnable ask) {
        asked.set(true);
        ask.run();
        try {
            finished.await(PATIENCE_SECONDS, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
