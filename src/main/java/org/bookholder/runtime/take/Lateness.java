package org.bookholder.runtime.take;

import org.bookholder.timing.StreamTime;

/**
 * Whether the position follows the voice too late, because the machine is too busy. It is late from half a second behind on, and in
 * time again when it has kept up for some seconds, so that what is said of it does not come and go. Confined to one thread.
 */
final class Lateness {
    private static final StreamTime LATE = StreamTime.ofSeconds(0.5);
    private static final StreamTime KEPT_UP = StreamTime.ofSeconds(0.25);
    private static final StreamTime FOR = StreamTime.ofSeconds(3);

    private final StreamTime start;
    private StreamTime keptUpSince;
    private boolean begun;
    private boolean late;

    /** Begins with a take. The ear has a few seconds to be ready: nobody reads before. */
    Lateness(StreamTime start) {
        this.start = start;
        this.keptUpSince = start;
    }

    /**
     * Takes in how far the position is behind.
     *
     * @param captured the sound captured so far
     * @param behind how much of it is not followed yet
     * @return whether something has changed
     */
    boolean changed(StreamTime captured, StreamTime behind) {
        StreamTime sinceStart = captured.since(start);
        begun |= FOR.isBefore(sinceStart) || (behind.isBefore(sinceStart) && !KEPT_UP.isBefore(behind));
        if (KEPT_UP.isBefore(behind)) {
            keptUpSince = captured;
        }
        boolean before = late;
        if (begun && LATE.isBefore(behind)) {
            late = true;
        } else if (late && !captured.since(keptUpSince).isBefore(FOR)) {
            late = false;
        }
        return late != before;
    }

    /** Whether it is late. */
    boolean late() {
        return late;
    }
}
