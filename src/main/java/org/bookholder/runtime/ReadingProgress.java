package org.bookholder.runtime;

import org.bookholder.timing.StreamTime;

/**
 * The progress of a reading, in addition to its state.
 *
 * @param rolling whether a take is running
 * @param behind audio that the open ear still has to hear before the takes are settled
 * @param unheard audio that the script ear missed because this machine was too slow
 * @param unsaved what could not be saved and why, for people; empty if everything was
 * @param over whether the reading has ended and everything is settled and written
 */
public record ReadingProgress(boolean rolling, StreamTime behind, StreamTime unheard, String unsaved, boolean over) {
    /** The progress at the start. */
    static final ReadingProgress NONE = of(false, StreamTime.ZERO, StreamTime.ZERO);

    /** The part of the progress that the session's stage knows. */
    static ReadingProgress of(boolean rolling, StreamTime behind, StreamTime unheard) {
        return new ReadingProgress(rolling, behind, unheard, "", false);
    }

    /** The same, completed by the other parts. */
    ReadingProgress with(String notSaved, boolean ended) {
        return new ReadingProgress(rolling, behind, unheard, notSaved, ended);
    }
}
