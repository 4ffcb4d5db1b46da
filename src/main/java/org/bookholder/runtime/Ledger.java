package org.bookholder.runtime;

import org.bookholder.journal.Journal;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.timing.StreamTime;

/**
 * Where events are entered: each goes to the journal and moves the state on. If the journal fails, everything goes on in
 * memory, and the journal catches up when it can. Confined to one thread, but for the state on show.
 */
final class Ledger {
    private final Journal journal;
    private final Latest<SessionState> shown;
    private SessionState state;
    private String failure = "";
    private StreamTime unsavedFrom = StreamTime.ZERO;
    private int unsaved;

    Ledger(Journal journal, SessionState before) {
        this.journal = journal;
        this.state = before;
        this.shown = new Latest<>(before);
    }

    /** The state after all that was entered. */
    SessionState state() {
        return state;
    }

    /** The state for views. */
    Latest<SessionState> shown() {
        return shown;
    }

    /** Enters an event. */
    void enter(SessionEvent event) {
        save(event);
        state = Session.apply(state, event);
        shown.set(unsaved == 0 ? state : state.withTrouble(trouble()));
    }

    /** What is not saved, and why, for people; empty if everything is. */
    String unsaved() {
        return unsaved == 0
                ? ""
                : unsaved + " notes, from " + Clocks.minutes(unsavedFrom) + " on, are not saved (" + failure + ")";
    }

    private void save(SessionEvent event) {
        try {
            journal.append(event);
            unsaved = 0;
        } catch (ProblemException e) {
            unsavedFrom = unsaved == 0 ? event.at() : unsavedFrom;
            failure = e.getMessage();
            unsaved++;
        }
    }

    private String trouble() {
        return "Notes are not being saved (" + failure + ")."
                + (state.trouble().isEmpty() ? "" : " " + state.trouble());
    }
}
