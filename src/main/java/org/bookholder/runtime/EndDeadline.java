package org.bookholder.runtime;

import java.util.function.LongSupplier;

/**
 * Decides what to do about a reading that was asked to end and has not: after 20 s the open ear skips the rest, after
 * 30 s the stages are stopped where they are. Confined to one thread.
 */
public final class EndDeadline {
    private static final long HURRY_NANOS = 20_000_000_000L;
    private static final long STOP_NANOS = 30_000_000_000L;

    private final LongSupplier nanoTime;
    private final long askedAt;

    /** The steps to take. */
    public enum Step {
        /** Nothing: it may still end by itself. */
        WAIT,
        /** The open ear should skip everything it has not heard yet. */
        HURRY,
        /** The stages should be stopped. */
        STOP
    }

    /** Starts the deadline: the reading is asked to end now. {@code nanoTime} is a monotonic clock in nanoseconds. */
    public EndDeadline(LongSupplier nanoTime) {
        this.nanoTime = nanoTime;
        this.askedAt = nanoTime.getAsLong();
    }

    /** What to do now. */
    public Step step() {
        long waited = nanoTime.getAsLong() - askedAt;
        return waited < HURRY_NANOS ? Step.WAIT : waited < STOP_NANOS ? Step.HURRY : Step.STOP;
    }
}
