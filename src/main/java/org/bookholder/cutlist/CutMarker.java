package org.bookholder.cutlist;

import java.util.Optional;
import org.bookholder.follow.model.Aside;
import org.bookholder.timing.StreamTime;

/**
 * A note for the editor at a place in the cut lesson.
 *
 * @param kind what it is about
 * @param offset time from the beginning of its clip or gap
 * @param line the line that it is about, or the line at which an aside is reported; from 1
 * @param aside the aside; empty for the other kinds
 * @param direction the direction's text; empty for the other kinds
 */
public record CutMarker(Kind kind, StreamTime offset, int line, Optional<Aside> aside, Optional<String> direction) {
    /** A marker that is about no direction. */
    public CutMarker(Kind kind, StreamTime offset, int line, Optional<Aside> aside) {
        this(kind, offset, line, aside, Optional.empty());
    }

    static CutMarker of(Kind kind, StreamTime offset, int line) {
        return new CutMarker(kind, offset, line, Optional.empty());
    }

    /** What a note can be about. */
    public enum Kind {
        /** A line to be recorded again. */
        PICKUP,
        /** A line that someone decided the editor should fix. */
        FIX,
        /** A person's note on a line that is used as it is. */
        NOTE,
        /** Something not in the script was said here; it is cut out. */
        ASIDE,
        /** A direction of the script stands before the word that is said here, or at the end. */
        DIRECTION
    }
}
