package org.bookholder.runtime.source;

import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.PreparedScript;

/** The script's file, whose text may be edited while it is read. Used by one thread at a time. */
public interface Manuscript {
    /**
     * The file's current text.
     *
     * @throws ProblemException if it cannot be read
     */
    String text() throws ProblemException;

    /**
     * Prepares a text for reading and for the ears.
     *
     * @throws ProblemException if it is not a valid script
     */
    PreparedScript prepare(String text) throws ProblemException;

    /** Saves a text that is used from now on beside the session. */
    void keep(String text) throws ProblemException;
}
