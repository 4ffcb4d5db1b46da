package org.bookholder.delivery;

import org.bookholder.timing.StreamTime;

/**
 * How much of a film's sound was compared with the takes that it was cut from.
 *
 * @param sessions how many sessions of the lesson were found; without one, nothing is compared
 * @param shared how much of the film is heard in one of their takes, too
 * @param read how much of the film is a reading of lines
 */
public record ComparedSound(int sessions, StreamTime shared, StreamTime read) {
    /** A film of which no session was found. */
    public static final ComparedSound NOT_COMPARED = new ComparedSound(0, StreamTime.ZERO, StreamTime.ZERO);

    /** What to tell of it, one line. */
    String fact() {
        return sessions == 0
                ? "sound not compared with a take: no session of this lesson was found"
                : "sound compared with the takes of " + (sessions == 1 ? "one session" : sessions + " sessions") + ": "
                        + Times.clock(shared) + " of the " + Times.clock(read) + " in which lines are read";
    }
}
