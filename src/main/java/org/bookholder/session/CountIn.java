package org.bookholder.session;

import org.bookholder.timing.StreamTime;

/**
 * The count-in of a take that is held before it is read.
 *
 * @param since when it was held, or when the count began
 * @param seconds the seconds to count from {@code since} on; 0 while the count waits for someone to begin it
 */
public record CountIn(StreamTime since, int seconds) {
    /** Whether it waits for someone to begin it. */
    public boolean waiting() {
        return seconds == 0;
    }
}
