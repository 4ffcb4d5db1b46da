package org.bookholder.desk;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import org.bookholder.session.Request;
import org.bookholder.session.SessionState;

/** A session as the desk sees it. Safe for use by several threads; only {@link #writePickups} may wait. */
public interface DeskSession {
    /** Names it among this presenter's sessions, also when the program is started again. */
    String name();

    /** Its current state. */
    SessionState state();

    /**
     * Asks for something; returns at once.
     *
     * @param reply told when it is in the journal, or that it will not be, on any thread
     */
    void ask(Request request, Request.Reply reply);

    /** Whether takes can be rolled; if not, the session can only be reviewed. */
    boolean live();

    /** The file of a take's recording, which may not exist; takes count from 1. */
    Path recording(int take);

    /** The folder of its films, which may not exist. */
    Path films();

    /** The editor's files. */
    DeskHandOff handOff();

    /** Writes the pickup list as PDF. */
    void writePickups(OutputStream out) throws IOException;
}
