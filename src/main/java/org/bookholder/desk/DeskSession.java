package org.bookholder.desk;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import org.bookholder.session.Request;
import org.bookholder.session.SessionState;

/** The session that a desk is for. Safe for use by several threads; nothing here waits but {@link #writePickups}. */
public interface DeskSession {
    /** Where it stands. */
    SessionState state();

    /**
     * Asks for something; returns at once.
     *
     * @param reply told when it is in the journal, or that it will not be, on any thread
     */
    void ask(Request request, Request.Reply reply);

    /** Whether takes can be rolled; if not, it is kept and can only be reviewed. */
    boolean live();

    /** The recording of a take, from 1; whether the file exists is another matter. */
    Path recording(int take);

    /** The editor's files. */
    DeskHandOff handOff();

    /** Writes the pickup list as PDF. */
    void writePickups(OutputStream out) throws IOException;
}
