package org.bookholder.runtime;

import java.util.function.LongSupplier;

/**
 * What is to be done about a reading that was asked to end and has not: after 20 s the open ear leaves the rest unheard, after
 * 30 s the stages are stopped where they stand. Confined to one thread.
 */
public final class EndDeadline {
    private static final long HURRY_NANOS = 20_000_000_000L;
    private static final long STOP_NANOS = 30_000_000_000L;

    private final LongSupplier nanoTime;
    private final long askedAt;

    /** What is to be done now. */
    public enum Step {
        /** Nothing: it may still end by itself. */
        WAIT,
        /** The open ear is to leave unheard what it has not heard yet. */
        HURRY,
        /** The stages are to be stopped. */
        STOP
    }

    /** The reading is asked to end now; {@code nanoTime} is a clock that only goes forward, in nanoseconds. */
    public EndDeadline(LongSupplier nanoTime) {
        this.nanoTime = nanoTime;
        this.askedAt = nanoTime.getAsLong();
    }

    /** What is to be done now. */
    public Step step() {
        long waited = nanoTime.getAsLong() - askedAt;
        return waited < HURRY_NANOS ? Step.WAIT : waited < STOP_NANOS ? Step.HURRY : Step.STOP;
    }
}
