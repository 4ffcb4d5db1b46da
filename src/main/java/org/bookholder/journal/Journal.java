package org.bookholder.journal;

import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;

/** The events of one session on disk, in the order in which they happened. Confined to one thread. */
public interface Journal extends AutoCloseable {
    /** Adds an event; it is safe against a kill of the program at once, and against loss of power within a second. */
    void append(SessionEvent event) throws ProblemException;

    /** All events, in order. */
    List<SessionEvent> events() throws ProblemException;

    @Override
    void close();
}
