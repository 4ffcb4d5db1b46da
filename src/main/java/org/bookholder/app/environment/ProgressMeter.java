package org.bookholder.app.environment;

import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.function.LongSupplier;

/** Works out how long work will still take from how long it has taken so far. Confined to one thread. */
public final class ProgressMeter {
    /** So little of the work tells nothing of the rest. */
    private static final double FIRST_ESTIMATE = 0.02;

    private final LongSupplier nanoTime;
    private final Consumer<Progress> listener;
    private final long begun;

    /** Begins to measure; {@code nanoTime} only goes forward. */
    public ProgressMeter(LongSupplier nanoTime, Consumer<Progress> listener) {
        this.nanoTime = nanoTime;
        this.listener = listener;
        begun = nanoTime.getAsLong();
    }

    /** So much of {@code what} is done, from 0 to 1; a value outside counts as the nearest one. */
    public void reached(String what, double part) {
        double done = Math.max(0, Math.min(1, part));
        double seconds = (nanoTime.getAsLong() - begun) / 1e9;
        OptionalDouble left =
                done < FIRST_ESTIMATE ? OptionalDouble.empty() : OptionalDouble.of(seconds / done - seconds);
        listener.accept(new Progress(what, done, left));
    }
}
