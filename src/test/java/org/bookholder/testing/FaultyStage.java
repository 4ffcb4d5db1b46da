package org.bookholder.testing;

import java.util.function.LongSupplier;
import org.bookholder.runtime.stage.Criticality;
import org.bookholder.runtime.stage.Stage;

/** A stage with planted faults: from a moment on, its next steps fail. */
public final class FaultyStage implements Stage {
    private final Stage stage;
    private final LongSupplier nanoTime;
    private final long from;
    private int left;

    /** The steps from {@code from} on fail, {@code times} of them. */
    public FaultyStage(Stage stage, LongSupplier nanoTime, long from, int times) {
        this.stage = stage;
        this.nanoTime = nanoTime;
        this.from = from;
        this.left = times;
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
    }

    @Override
    public int doWork() throws Exception {
        if (left > 0 && nanoTime.getAsLong() >= from) {
            left--;
            throw new IllegalStateException("a planted fault");
        }
        return stage.doWork();
    }

    @Override
    public void onClose() throws Exception {
        stage.onClose();
    }

    @Override
    public void onGivenUp() throws Exception {
        stage.onGivenUp();
    }
}
