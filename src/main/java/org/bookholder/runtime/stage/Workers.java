package org.bookholder.runtime.stage;

import java.time.Duration;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.LongSupplier;

/** A crew of threads, one for each stage. Safe for use by several threads. */
public final class Workers implements Crew, AutoCloseable {
    private static final Patience STANDARD = new Patience(Duration.ofSeconds(5), Duration.ofSeconds(1));

    private final List<Worker> workers = new CopyOnWriteArrayList<>();
    private final LongSupplier nanoTime;
    private final FaultListener faults;
    private final Patience patience;

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
        workers.add(Worker.start(new SupervisedStage(stage, nanoTime, faults)));
    }

    /**
     * Stops each stage after its current step. A stage that takes longer than five seconds is interrupted; one that
     * still does not end is abandoned and reported. So a stage that hangs costs six seconds.
     */
    @Override
    public void close() {
        workers.forEach(Worker::stop);
        try {
            for (Worker worker : workers) {
                end(worker);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void end(Worker worker) throws InterruptedException {
        if (worker.await(patience.beforeInterrupt().toNanos())) {
            return;
        }
        worker.interrupt();
        if (!worker.await(patience.afterInterrupt().toNanos())) {
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
