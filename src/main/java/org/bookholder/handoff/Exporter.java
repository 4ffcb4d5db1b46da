package org.bookholder.handoff;

import java.io.IOException;
import java.util.List;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;

/** Writes a session as one kind of file, for people who continue to work with it. */
public interface Exporter {
    /** The kind's name on the command line, one lower-case word. */
    String name();

    /** What the file contains and whom it is for, in one phrase. */
    String description();

    /**
     * Writes the session.
     *
     * @param state the state of the session
     * @param events the events it was derived from, in order
     * @param out receives the text
     */
    void write(SessionState state, List<SessionEvent> events, Appendable out) throws IOException;
}
