package org.bookholder.runtime;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/** An end that is waited for. Safe for use by several threads. */
final class Finish {
    private final CountDownLatch over = new CountDownLatch(1);

    /** It has come; whoever waits goes on. */
    void come() {
        over.countDown();
    }

    /** Waits for it; says whether it came within {@code millis}, or the thread was interrupted. */
    boolean await(long millis) {
        try {
            return over.await(millis, TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return true;
        }
    }
}
