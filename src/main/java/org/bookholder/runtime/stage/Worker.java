package org.bookholder.runtime.stage;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BiConsumer;

/** One thread that drives one stage; the only maker of threads. */
final class Worker {
    /** Long enough to cost nothing, short enough that a word is not seen to come late. */
    private static final long FIRST_IDLE_NANOS = TimeUnit.MILLISECONDS.toNanos(1);

    private static final long LONGEST_IDLE_NANOS = TimeUnit.MILLISECONDS.toNanos(4);

    private final Stage stage;
    private final BiConsumer<Stage, Throwable> onFailure;
    private final CountDownLatch ended = new CountDownLatch(1);
    private volatile boolean stopped;

    private Worker(Stage stage, BiConsumer<Stage, Throwable> onFailure) {
        this.stage = stage;
        this.onFailure = onFailure;
    }

    /** Starts a thread for {@code stage}; {@code onFailure} is called on that thread, at most twice. */
    static Worker start(Stage stage, BiConsumer<Stage, Throwable> onFailure) {
        Worker worker = new Worker(stage, onFailure);
        Thread thread = new Thread(worker::run, "bookholder " + stage.role());
        thread.setDaemon(true);
        thread.start();
        return worker;
    }

    /** Lets the stage do no further step; returns at once. */
    void stop() {
        stopped = true;
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
            guard(this::drive);
            guard(stage::onClose);
        } finally {
            ended.countDown();
        }
    }

    private void drive() throws Exception {
        stage.onStart();
        long idle = FIRST_IDLE_NANOS;
        while (!stopped) {
            int done = stage.doWork();
            if (done < 0) {
                return;
            }
            if (done == 0) {
                LockSupport.parkNanos(idle);
                idle = Math.min(2 * idle, LONGEST_IDLE_NANOS);
            } else {
                idle = FIRST_IDLE_NANOS;
            }
        }
    }

    /** A thread that dies unseen is worse than any failure, so errors of the machine are handed on as well. */
    @SuppressWarnings("CatchingUnchecked")
    private void guard(Step step) {
        try {
            step.run();
        } catch (Throwable failure) {
            onFailure.accept(stage, failure);
        }
    }

    private interface Step {
        void run() throws Exception;
    }
}
