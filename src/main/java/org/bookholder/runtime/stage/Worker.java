package org.bookholder.runtime.stage;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/** One thread that runs one stage. The only class that creates threads. */
final class Worker {
    /** Long enough to cost nothing, short enough that a word does not visibly come late. */
    private static final long FIRST_IDLE_NANOS = TimeUnit.MILLISECONDS.toNanos(1);

    private static final long LONGEST_IDLE_NANOS = TimeUnit.MILLISECONDS.toNanos(4);

    private final SupervisedStage stage;
    private final Thread thread;
    private final CountDownLatch ended = new CountDownLatch(1);
    private volatile boolean stopped;

    private Worker(SupervisedStage stage) {
        this.stage = stage;
        this.thread = new Thread(this::run, "bookholder " + stage.role());
    }

    /** Starts a thread for {@code stage}. */
    static Worker start(SupervisedStage stage) {
        Worker worker = new Worker(stage);
        worker.thread.setDaemon(true);
        worker.thread.start();
        return worker;
    }

    String role() {
        return stage.role();
    }

    /** Stops the stage after its current step; returns at once. */
    void stop() {
        stopped = true;
    }

    /** Interrupts the thread. */
    void interrupt() {
        thread.interrupt();
    }

    /** The current stack of the thread. */
    StackTraceElement[] stack() {
        return thread.getStackTrace();
    }

    /** Whether the thread is finished with its stage. */
    boolean ended() {
        return ended.getCount() == 0;
    }

    /** Waits for the end; returns whether it came in time. */
    boolean await(long nanos) throws InterruptedException {
        return ended.await(nanos, TimeUnit.NANOSECONDS);
    }

    private void run() {
        try {
            drive();
            stage.close();
        } finally {
            ended.countDown();
        }
    }

    private void drive() {
        long idle = FIRST_IDLE_NANOS;
        // Run at least the start: code that waits for the stage's end relies on it being closed.
        int done = stage.step();
        while (!stopped) {
            if (done < 0) {
                return;
            }
            if (done == 0) {
                LockSupport.parkNanos(idle);
                idle = Math.min(2 * idle, LONGEST_IDLE_NANOS);
            } else {
                idle = FIRST_IDLE_NANOS;
            }
            done = stage.step();
        }
    }
}
