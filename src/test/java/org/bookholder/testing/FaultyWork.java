package org.bookholder.testing;

import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.bookholder.runtime.stage.FaultListener;
import org.bookholder.runtime.stage.OptionalWork;

/** Optional work with planted faults: from a moment on, it fails. */
final class FaultyWork extends OptionalWork {
    private final LongSupplier nanoTime;
    private final long from;

    /** All work from {@code from} on fails. */
    FaultyWork(String role, FaultListener faults, LongSupplier nanoTime, long from) {
        super(role, faults);
        this.nanoTime = nanoTime;
        this.from = from;
    }

    @Override
    public <T> T get(Supplier<T> work, T otherwise) {
        return super.get(
                () -> {
                    if (nanoTime.getAsLong() >= from) {
                        throw new IllegalStateException("a planted fault");
                    }
                    return work.get();
                },
                otherwise);
    }
}
