package org.bookholder.testing;

import java.time.Duration;
import java.util.function.LongSupplier;
import org.bookholder.runtime.stage.Criticality;
import org.bookholder.runtime.stage.Stage;

/** A stage each of whose steps takes a while of virtual time, as if what it does waited for a slow device; until a time. */
final class SlowStage implements Stage {
    private final Stage stage;
    private final Duration step;
    private final long until;
    private final LongSupplier nanoTime;
    private long next;
    private boolean working;

    SlowStage(Stage stage, Duration step, long until, LongSupplier nanoTime) {
        this.stage = stage;
        this.step = step;
        this.until = until;
        this.nanoTime = nanoTime;
    }

    @Override
    public String role() {
        return stage.role();
    }

    @Override
    public Criticality criticality() {
        return stage.criticality();
    }

    @Override
    public void onStart() throws Exception {
        stage.onStart();
        next = nanoTime.getAsLong() + step.toNanos();
    }

    @Override
    public int doWork() throws Exception {
        if (nanoTime.getAsLong() < Math.min(next, until)) {
            return 0;
        }
        next = nanoTime.getAsLong() + step.toNanos();
        working = true;
        try {
            return stage.doWork();
        } finally {
            working = false;
        }
    }

    /** Whether it is at work at this moment. */
    boolean working() {
        return working;
    }

    @Override
    public void onClose() throws Exception {
        stage.onClose();
    }
}
