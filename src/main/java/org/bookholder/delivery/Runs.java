package org.bookholder.delivery;

import org.bookholder.timing.StreamTime;

/** Finds stretches of time in which a condition holds. Confined to one thread. */
final class Runs {
    private final Sink sink;
    private StreamTime start = StreamTime.ZERO;
    private int count;

    Runs(Sink sink) {
        this.sink = sink;
    }

    /** Notes whether the condition holds from {@code at} on. */
    void see(StreamTime at, boolean holds) {
        if (!holds) {
            end(at);
        } else if (count++ == 0) {
            start = at;
        }
    }

    /** The film ends at {@code at}. */
    void end(StreamTime at) {
        if (count > 0) {
            sink.run(start, at, count);
            count = 0;
        }
    }

    /** Receives each stretch when it has ended. */
    @FunctionalInterface
    interface Sink {
        /** The condition held from {@code start} to {@code end}, in {@code count} observations. */
        void run(StreamTime start, StreamTime end, int count);
    }
}
