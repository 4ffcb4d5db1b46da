package org.bookholder.runtime.stage;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/** One thread that drives one stage; the only maker of threads. */
final class Worker {
    /** Long enough to cost nothing, short enough that a word is not seen to come late. */
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

    /** Lets the stage do no further step; returns at once. */
    void stop() {
        stopped = true;
    }

    /** Interrupts what the stage waits for. */
    void interrupt() {
        thread.interrupt();
    }

    /** What the thread does at this moment. */
    StackTraceElement[] stack() {
        return thread.getStackTrace();
    }

    /** Whether the thread has let go of its stage. */
    boolean ended() {
        return ended.getCount() == 0;
    }

    /** Waits for the end; says whether it came in time. */
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
        // At least the start: whatever waits for the stage's end relies on its being closed.
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
