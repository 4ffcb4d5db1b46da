package org.bookholder.runtime;

import java.util.ArrayDeque;
import java.util.Deque;
import org.bookholder.journal.Journal;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;

/**
 * Where events are entered: each goes to the journal and moves the state on. If the journal fails, everything goes on in
 * memory, and what it lacks is entered again at the end. Confined to one thread, but for the state on show.
 */
final class Ledger {
    private final Journal journal;
    private final Latest<SessionState> shown;
    private final Deque<SessionEvent> unsaved = new ArrayDeque<>();
    private SessionState state;
    private String failure = "";

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
        shown.set(state);
    }

    /** Tries once more to save what the journal lacks. */
    void saveTheRest() {
        if (unsaved.isEmpty()) {
            return;
        }
        try {
            while (!unsaved.isEmpty()) {
                journal.append(unsaved.element());
                unsaved.remove();
            }
            failure = "";
        } catch (ProblemException e) {
            failure = e.getMessage();
        }
    }

    /** What is not saved, and why, for people; empty if everything is. */
    String unsaved() {
        return unsaved.isEmpty()
                ? ""
                : unsaved.size() + " notes, from "
                        + Clocks.minutes(unsaved.element().at()) + " on, are not saved (" + failure + ")";
    }

    private void save(SessionEvent event) {
        if (!unsaved.isEmpty()) {
            unsaved.add(event);
            return;
        }
        try {
            journal.append(event);
        } catch (ProblemException e) {
            failure = e.getMessage();
            unsaved.add(event);
            tellAtOnce(event);
        }
    }

    /** Shown like a failed recording: the presenter has to know of either in the same way. */
    private void tellAtOnce(SessionEvent event) {
        SessionEvent told = new SessionEvent.RecordingFailed(event.at(), "notes are not being saved: " + failure);
        unsaved.add(told);
        state = Session.apply(state, told);
    }
}
