package org.bookholder.runtime.record;

import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.TakeRecording;
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

    /** A tape on which one recording is made, whose first sample sounds at {@code start}. */
    static Tape of(TakeRecording recording, StreamTime start) throws ProblemException {
        return FolderTapes.tape(recording, start);
    }

    /** The second place for sound that the first one refuses; none unless it is said otherwise. */
    default Overflow overflow() {
        return Overflow.NONE;
    }

    /** Records in a session's folder, without a second place. */
    static Tapes in(SessionFolder folder) {
        return in(folder, Overflow.NONE);
    }

    /** Records in a session's folder. */
    static Tapes in(SessionFolder folder, Overflow overflow) {
        return new FolderTapes(folder, overflow);
    }
}
