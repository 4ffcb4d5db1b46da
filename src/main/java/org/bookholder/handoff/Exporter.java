package org.bookholder.handoff;

import java.io.IOException;
import java.util.List;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;

/** Writes a session as one kind of file, for people who go on working with it. */
public interface Exporter {
    /** The kind's name on the command line, one lower-case word. */
    String name();

    /** What it holds and for whom, one phrase. */
    String description();

    /**
     * Writes the session.
     *
     * @param state where the session stands
     * @param events the events it was derived from, in order
     * @param out where the text goes
     */
    void write(SessionState state, List<SessionEvent> events, Appendable out) throws IOException;
}
