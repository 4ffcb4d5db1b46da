package org.bookholder.journal.event;

import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;

/** The events of one session on disk, in the order in which they happened. Confined to one thread. */
public interface Journal extends AutoCloseable {
    /**
     * Adds an event; it is safe against a kill of the program at once, and against loss of power within a second.
     *
     * @throws ProblemException if it could not be written. It is then kept in memory and written before the next one, so it
     *     is not to be added again, and when the next one is added without a problem nothing is missing.
     */
    void append(SessionEvent event) throws ProblemException;

    /** All events, in order. */
    List<SessionEvent> events() throws ProblemException;

    @Override
    void close();
}
