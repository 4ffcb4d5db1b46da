package org.bookholder.journal.sqlite;

import org.bookholder.journal.event.CheckedText;
import org.bookholder.session.SessionEvent;

/**
 * An event found in a page.
 *
 * @param number its number in the journal, as it is written before it; 0 if that cannot be read
 * @param event what happened
 * @param state what the checksum of its text tells
 * @param from where in the page its cell begins
 * @param to where in the page its cell ends
 */
record EventCell(long number, SessionEvent event, CheckedText.State state, int from, int to) {
    /** Whether its text has changed since it was written. */
    boolean changed() {
        return state == CheckedText.State.CHANGED;
    }

    /** This one or another copy of it, whichever is more surely as it was written; this one if both are. */
    EventCell better(EventCell other) {
        return other.state.compareTo(state) < 0 ? other : this;
    }

    /** The same with another number. */
    EventCell numbered(long other) {
        return new EventCell(other, event, state, from, to);
    }
}
