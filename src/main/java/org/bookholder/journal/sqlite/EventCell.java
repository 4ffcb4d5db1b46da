package org.bookholder.journal.sqlite;

import org.bookholder.session.SessionEvent;

/**
 * An event found in a page.
 *
 * @param number its number in the journal, as it is written before it; 0 if that cannot be read
 * @param event what happened
 * @param from where in the page its cell begins
 * @param to where in the page its cell ends
 */
record EventCell(long number, SessionEvent event, int from, int to) {
    /** The same with another number. */
    EventCell numbered(long other) {
        return new EventCell(other, event, from, to);
    }
}
