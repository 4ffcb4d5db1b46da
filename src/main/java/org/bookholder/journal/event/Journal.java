package org.bookholder.journal.event;

import java.util.List;
import java.util.Optional;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;

/** The events of one session on disk, in the order in which they happened. Used by one thread at a time. */
public interface Journal extends AutoCloseable {
    /**
     * Adds events: all of them, in order, or none. When it returns they are safe against loss of power. It may take as
     * long as the disk takes.
     *
     * @throws ProblemException if they could not be written. Give them again, in the same order, when there is room: those
     *     that the failed attempt left on disk after all are then not added twice
     * @throws IllegalArgumentException if one of them can never be written, whatever the disk does; none was added
     */
    void append(List<SessionEvent> events) throws ProblemException;

    /** Adds one event, in the same way. */
    default void append(SessionEvent event) throws ProblemException {
        append(List.of(event));
    }

    /** All events that can be read, in order. */
    List<SessionEvent> events() throws ProblemException;

    /** What {@link #events} could not read when it was last called; empty if it read everything. */
    default Optional<ProblemException> damage() {
        return Optional.empty();
    }

    /** Lets the file go; calling it again does nothing. */
    @Override
    void close();
}
