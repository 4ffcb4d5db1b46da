package org.bookholder.delivery;

import org.bookholder.timing.StreamTime;

/** Finds stretches in which something holds. Confined to one thread. */
final class Runs {
    private final Sink sink;
    private StreamTime start = StreamTime.ZERO;
    private int count;

    Runs(Sink sink) {
        this.sink = sink;
    }

    /** From {@code at} on it holds or does not. */
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

    /** Is told of each stretch when it is over. */
    @FunctionalInterface
    interface Sink {
        /** Something held from {@code start} to {@code end}, as was seen {@code count} times. */
        void run(StreamTime start, StreamTime end, int count);
    }
}
