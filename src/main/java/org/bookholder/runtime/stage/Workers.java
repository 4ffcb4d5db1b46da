package org.bookholder.runtime.stage;

import java.time.Duration;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.LongSupplier;

/** A crew of threads, one for each stage. Safe for use by several threads. */
public final class Workers implements Crew, AutoCloseable {
    private static final Patience STANDARD = new Patience(Duration.ofSeconds(5), Duration.ofSeconds(1));

    private final List<Worker> workers = new CopyOnWriteArrayList<>();
    private final LongSupplier nanoTime;
    private final FaultListener faults;
    private final Patience patience;
    private volatile boolean closing;

    /**
     * How long stopping may take.
     *
     * @param beforeInterrupt how long a stage may take for its current step before it is interrupted
     * @param afterInterrupt how long it may take after that before it is abandoned
     */
    record Patience(Duration beforeInterrupt, Duration afterInterrupt) {}

    /**
     * Creates a crew without threads.
     *
     * @param nanoTime a monotonic clock in nanoseconds
     * @param faults receives each fault on the stage's thread; the only place where faults are handled
     */
    public Workers(LongSupplier nanoTime, FaultListener faults) {
        this(nanoTime, faults, STANDARD);
    }

    Workers(LongSupplier nanoTime, FaultListener faults, Patience patience) {
        this.nanoTime = nanoTime;
        this.faults = faults;
        this.patience = patience;
    }

    @Override
    public void takeOn(Stage stage) {
        workers.removeIf(Worker::ended);
        Worker worker = Worker.start(new SupervisedStage(stage, nanoTime, faults));
        workers.add(worker);
        if (closing) {
            worker.stop();
        }
    }

    /**
     * Stops each stage after its current step. A stage that takes longer than five seconds is interrupted; one that
     * still does not end is abandoned and reported. So a stage that hangs costs six seconds. Stages that are taken on meanwhile are started,
     * so that they can be closed, and stopped as well. An interrupt of this thread is handed on afterwards.
     */
    @Override
    public void close() {
        closing = true;
        workers.forEach(Worker::stop);
        boolean interrupted = false;
        Set<Worker> done = new HashSet<>();
        while (!done.containsAll(workers)) {
            for (Worker worker : workers) {
                if (done.add(worker)) {
                    interrupted |= end(worker);
                }
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    /** Returns whether this thread was interrupted meanwhile. */
    private boolean end(Worker worker) {
        boolean interrupted = Thread.interrupted();
        try {
            end(worker, patience);
        } catch (InterruptedException e) {
            interrupted = true;
            endNow(worker);
        }
        return interrupted;
    }

    /** The thread that closes is in a hurry: the stage is interrupted at once. */
    private void endNow(Worker worker) {
        try {
            end(worker, new Patience(Duration.ZERO, patience.afterInterrupt()));
        } catch (InterruptedException again) {
            Thread.currentThread().interrupt();
        }
    }

    private void end(Worker worker, Patience granted) throws InterruptedException {
        if (worker.await(granted.beforeInterrupt().toNanos())) {
            return;
        }
        worker.interrupt();
        if (!worker.await(granted.afterInterrupt().toNanos())) {
            faults.failed(new StageFault(worker.role(), StageFault.Consequence.LEFT_BEHIND, hanging(worker)));
        }
    }

    /** The cause for the log: the stack where the thread hangs. */
    private static Throwable hanging(Worker worker) {
        IllegalStateException cause = new IllegalStateException("did not stop when it was told to");
        cause.setStackTrace(worker.stack());
        return cause;
    }
}
