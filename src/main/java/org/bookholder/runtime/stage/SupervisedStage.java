package org.bookholder.runtime.stage;

import java.time.Duration;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.LongSupplier;

/**
 * Runs a stage step by step and applies the rule for faults (see {@link Criticality}). Threads and tests both run
 * stages through this class, so that they follow the same rule. Confined to one thread.
 */
final class SupervisedStage {
    /** The waiting time before each restart; after the last restart the stage is given up. */
    static final List<Duration> GAPS = List.of(
            Duration.ofMillis(500),
            Duration.ofSeconds(1),
            Duration.ofSeconds(2),
            Duration.ofSeconds(4),
            Duration.ofSeconds(8));

    /** A stage that has worked this long without a fault has recovered. */
    static final Duration HEALTHY = Duration.ofSeconds(10);

    /** A stage that has worked this long without a fault has all its restarts again. */
    static final Duration STABLE = Duration.ofMinutes(10);

    private enum Condition {
        WAITING,
        RUNNING,
        ENDED
    }

    private final Stage stage;
    private final LongSupplier nanoTime;
    private final FaultListener faults;
    private Condition condition = Condition.WAITING;
    private int restarts;
    private boolean ailing;
    private long startAt;
    private long startedAt;

    SupervisedStage(Stage stage, LongSupplier nanoTime, FaultListener faults) {
        this.stage = stage;
        this.nanoTime = nanoTime;
        this.faults = faults;
        this.startAt = nanoTime.getAsLong();
    }

    String role() {
        return stage.role();
    }

    /**
     * Starts the stage or runs one step; returns the amount of work done, 0 for none, negative if the stage has ended
     * for good.
     */
    int step() {
        return switch (condition) {
            case WAITING -> nanoTime.getAsLong() - startAt < 0 ? 0 : attempt(this::start);
            case RUNNING -> attempt(this::work);
            case ENDED -> -1;
        };
    }

    /** Ends the stage at once; calling it again does nothing. */
    void close() {
        if (condition == Condition.RUNNING) {
            attempt(() -> -1);
        }
        condition = Condition.ENDED;
    }

    private int start() throws Exception {
        condition = Condition.RUNNING;
        startedAt = nanoTime.getAsLong();
        stage.onStart();
        return 1;
    }

    private int work() throws Exception {
        int done = stage.doWork();
        if (restarts > 0 && nanoTime.getAsLong() - startedAt >= STABLE.toNanos()) {
            restarts = 0;
        }
        if (ailing && nanoTime.getAsLong() - startedAt >= HEALTHY.toNanos()) {
            ailing = false;
            faults.recovered(stage.role());
        }
        return done;
    }

    /** Catches errors of the virtual machine too, because a thread that dies unnoticed is worse than any fault. */
    @SuppressWarnings("CatchingUnchecked")
    private int attempt(Callable<Integer> step) {
        try {
            int done = step.call();
            if (done >= 0) {
                return done;
            }
        } catch (Throwable cause) {
            return failed(cause);
        }
        condition = Condition.ENDED;
        try {
            stage.onClose();
        } catch (Throwable cause) {
            tell(cause, stage.criticality() == Criticality.ESSENTIAL);
        }
        return -1;
    }

    private int failed(Throwable cause) {
        guard(cause, stage::onClose);
        if (stage.criticality() == Criticality.RESTARTABLE && restarts < GAPS.size()) {
            startAt = nanoTime.getAsLong() + GAPS.get(restarts).toNanos();
            restarts++;
            ailing = true;
            condition = Condition.WAITING;
            faults.failed(new StageFault(stage.role(), StageFault.Consequence.RESTARTS, cause));
            return 1;
        }
        condition = Condition.ENDED;
        boolean essential = stage.criticality() == Criticality.ESSENTIAL;
        if (!essential) {
            guard(cause, stage::onGivenUp);
        }
        tell(cause, essential);
        return -1;
    }

    private void tell(Throwable cause, boolean essential) {
        faults.failed(new StageFault(
                stage.role(),
                essential ? StageFault.Consequence.SESSION_ENDS : StageFault.Consequence.GIVEN_UP,
                cause));
    }

    /** Adds an exception during the closing of a failed stage to the original fault. */
    @SuppressWarnings("CatchingUnchecked")
    private static void guard(Throwable cause, Step step) {
        try {
            step.run();
        } catch (Throwable another) {
            if (another != cause) {
                cause.addSuppressed(another);
            }
        }
    }

    private interface Step {
        void run() throws Exception;
    }
}
