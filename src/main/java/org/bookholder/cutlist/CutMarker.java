package org.bookholder.cutlist;

import org.bookholder.timing.StreamTime;

/**
 * A note for the editor at a place of the cut lesson.
 *
 * @param kind what it is about
 * @param offset from the beginning of its clip or gap
 * @param text the note
 */
public record CutMarker(Kind kind, StreamTime offset, String text) {
    /** What a note can be about. */
    public enum Kind {
        /** A line to be recorded again. */
        PICKUP,
        /** A line that the editor is to mend: someone has decided so. */
        FIX,
        /** What someone wrote on a line that is used as it is. */
        NOTE,
        /** Something was said here that is not in the script; it is cut out. */
        ASIDE
    }
}
