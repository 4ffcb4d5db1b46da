package org.bookholder.runtime.source;

import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.PreparedScript;

/** The script's file, whose text may be changed in an editor while it is read. Used by one thread at a time. */
public interface Manuscript {
    /** The text that the file holds now; a problem if it cannot be read. */
    String text() throws ProblemException;

    /** A text made ready for reading and for the ears; a problem if it is no script. */
    PreparedScript prepare(String text) throws ProblemException;

    /** Keeps a text that is read from now on beside the session. */
    void keep(String text) throws ProblemException;
}
