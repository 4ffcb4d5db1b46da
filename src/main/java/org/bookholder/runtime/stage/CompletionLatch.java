package org.bookholder.runtime.stage;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/** Lets threads wait until something has completed. Safe for use by several threads. */
public final class CompletionLatch {
    private final CountDownLatch over = new CountDownLatch(1);

    /** Marks it as completed; waiting threads continue. */
    public void come() {
        over.countDown();
    }

    /** Waits for completion; returns true if it came within {@code millis} or the thread was interrupted. */
    public boolean await(long millis) {
        try {
            return over.await(millis, TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return true;
        }
    }
}
