package org.bookholder.runtime.stage;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/** An end that is waited for. Safe for use by several threads. */
public final class CompletionLatch {
    private final CountDownLatch over = new CountDownLatch(1);

    /** It has come; whoever waits goes on. */
    public void come() {
        over.countDown();
    }

    /** Waits for it; says whether it came within {@code millis}, or the thread was interrupted. */
    public boolean await(long millis) {
        try {
            return over.await(millis, TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return true;
        }
    }
}
