package org.bookholder.runtime.record;

import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.timing.StreamTime;

/** Creates the recordings of takes. */
@FunctionalInterface
public interface Tapes {
    /**
     * Starts a take's recording.
     *
     * @param take take number, from 1
     * @param rate samples per second
     * @param start where the take's audio begins in the session's
     */
    Tape begin(int take, int rate, StreamTime start) throws ProblemException;

    /** Records in a session's folder. */
    static Tapes in(SessionFolder folder) {
        return new FolderTapes(folder);
    }
}
