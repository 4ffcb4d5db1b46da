package org.bookholder.journal;

import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import org.bookholder.timing.StreamTime;

/**
 * A session as shown in a list.
 *
 * @param folder where it lies
 * @param title the lesson's title; empty if nothing was recorded yet
 * @param began time of day at which it was first opened
 * @param takes how many takes were rolled
 * @param length audio recorded, over all takes
 * @param standing how it was left
 * @param trouble why it cannot be read, or cannot be read as a whole, for people; empty if it can
 */
public record SessionSummary(
        Path folder,
        String title,
        Optional<Instant> began,
        int takes,
        StreamTime length,
        Standing standing,
        String trouble) {
    /** How a session was left. */
    public enum Standing {
        /** Its last take was cut, and it was closed. */
        FINISHED,
        /** It ended in the middle of a take, or was not closed: the program was killed, or the power failed. */
        BROKEN_OFF,
        /** Nothing was kept in it: the program was ended while it began. */
        EMPTY,
        /** It is open now. */
        OPEN,
        /** It cannot be read. */
        UNREADABLE
    }
}
