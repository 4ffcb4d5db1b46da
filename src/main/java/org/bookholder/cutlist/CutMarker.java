package org.bookholder.cutlist;

import java.util.Optional;
import org.bookholder.follow.model.Aside;
import org.bookholder.timing.StreamTime;

/**
 * A note for the editor at a place of the cut lesson.
 *
 * @param kind what it is about
 * @param offset from the beginning of its clip or gap
 * @param line the line that it is about, or at which an aside is told; from 1
 * @param aside what was said that is not in the script; empty for the other kinds
 */
public record CutMarker(Kind kind, StreamTime offset, int line, Optional<Aside> aside) {
    static CutMarker of(Kind kind, StreamTime offset, int line) {
        return new CutMarker(kind, offset, line, Optional.empty());
    }

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
