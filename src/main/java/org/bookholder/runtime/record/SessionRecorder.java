package org.bookholder.runtime.record;

import org.bookholder.journal.event.Journal;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.Latest;
import org.bookholder.session.Request;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.session.Trouble;
import org.bookholder.session.Troubles;
import org.bookholder.timing.StreamTime;

/**
 * Where events are entered: each goes to the journal and moves the state on. If the journal fails, everything goes on in
 * memory, and the journal catches up when it can. Confined to one thread, but for the state on show.
 */
public final class SessionRecorder {
    private final Journal journal;
    private final Latest<SessionState> shown;
    private SessionState state;
    private String failure = "";
    private StreamTime unsavedFrom = StreamTime.ZERO;
    private int unsaved;
    private Troubles troubles = Troubles.NONE;

    public SessionRecorder(Journal journal, SessionState before) {
        this.journal = journal;
        this.state = before;
        this.shown = new Latest<>(before);
    }

    /** The state after all that was entered. */
    public SessionState state() {
        return state;
    }

    /** The state for views. */
    public Latest<SessionState> shown() {
        return shown;
    }

    /** Enters an event. */
    public void enter(SessionEvent event) {
        save(event);
        state = Session.apply(state, event);
        show();
    }

    /** Shows views what is wrong beside what the events tell, until it is {@link #mended}. */
    public void amiss(Trouble trouble) {
        troubles = troubles.with(trouble);
        show();
    }

    /** Takes back what is wrong of a kind. */
    public void mended(Trouble.Kind kind) {
        troubles = troubles.without(kind);
        show();
    }

    private void show() {
        SessionState seen = state;
        for (Trouble trouble : troubles.all()) {
            seen = seen.with(trouble);
        }
        shown.set(unsaved == 0 ? seen : seen.with(new Trouble(Trouble.Kind.NOT_SAVED, failure)));
    }

    /** Tells that the events entered so far are in the journal, or that they are not. */
    public void tellWhetherSaved(Request.Reply reply) {
        if (unsaved == 0) {
            reply.done();
        } else {
            reply.failed("Done, but not saved: " + failure + ".");
        }
    }

    /** What is not saved, and why, for people; empty if everything is. */
    public String unsaved() {
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
}
