package org.bookholder.app.home;

import java.time.Duration;
import java.util.function.LongSupplier;

/** Tells when nobody needs the program any more: no page was open for a while, and nothing is going on. Safe for several threads. */
final class IdleTimer {
    /** Our choice: long enough to close the browser and open it again, or to start the machine's slow one. */
    static final Duration ALONE = Duration.ofMinutes(10);

    private final LongSupplier nanoTime;
    private long needed;

    IdleTimer(LongSupplier nanoTime) {
        this.nanoTime = nanoTime;
        needed = nanoTime.getAsLong();
    }

    /** Somebody is there, or something is going on. */
    synchronized void needed() {
        needed = nanoTime.getAsLong();
    }

    synchronized boolean over() {
        return nanoTime.getAsLong() - needed > ALONE.toNanos();
    }
}
