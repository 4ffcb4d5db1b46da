package org.bookholder.testing;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongSupplier;

/** A clock that stands still until a test moves it. Safe for use by several threads. */
public final class FakeClock implements LongSupplier, InstantSource {
    private static final Instant BEGINNING = Instant.parse("2026-03-02T09:00:00Z");

    private final AtomicLong nanos = new AtomicLong();

    @Override
    public long getAsLong() {
        return nanos.get();
    }

    @Override
    public Instant instant() {
        return BEGINNING.plusNanos(nanos.get());
    }

    public void pass(Duration time) {
        nanos.addAndGet(time.toNanos());
    }

    public void passMillis(long millis) {
        pass(Duration.ofMillis(millis));
    }
}
