package org.bookholder.app.environment;

import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.function.LongSupplier;

/** Estimates the remaining time of some work from the time so far. Confined to one thread. */
public final class ProgressMeter {
    /** Below this part of the work there is no estimate. */
    private static final double FIRST_ESTIMATE = 0.02;

    private final LongSupplier nanoTime;
    private final Consumer<Progress> listener;
    private final long begun;

    /** Starts measuring; {@code nanoTime} is monotonic. */
    public ProgressMeter(LongSupplier nanoTime, Consumer<Progress> listener) {
        this.nanoTime = nanoTime;
        this.listener = listener;
        begun = nanoTime.getAsLong();
    }

    /** Reports the part of {@code what} that is done, clamped to 0 to 1. */
    public void reached(String what, double part) {
        double done = Math.max(0, Math.min(1, part));
        double seconds = (nanoTime.getAsLong() - begun) / 1e9;
        OptionalDouble left =
                done < FIRST_ESTIMATE ? OptionalDouble.empty() : OptionalDouble.of(seconds / done - seconds);
        listener.accept(new Progress(what, done, left));
    }
}
