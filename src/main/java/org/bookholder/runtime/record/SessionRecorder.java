package org.bookholder.runtime.record;

import org.bookholder.runtime.stage.Latest;
import org.bookholder.session.Request;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.session.Trouble;
import org.bookholder.session.Troubles;

/**
 * Where events are entered: each moves the state on and is handed to the journal. Whatever becomes of the journal,
 * everything goes on in memory. Confined to one thread, but for the state on show.
 */
public final class SessionRecorder {
    private final JournalQueue journal;
    private final Latest<SessionState> shown;
    private SessionState state;
    private String failure = "";
    private Troubles troubles = Troubles.NONE;

    public SessionRecorder(JournalQueue journal, SessionState before) {
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
        journal.add(event);
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

    /** Shows people whether notes are being saved, if that has changed; to be called now and then. */
    public void look() {
        if (!failure.equals(journal.failure())) {
            failure = journal.failure();
            show();
        }
    }

    private void show() {
        SessionState seen = state;
        for (Trouble trouble : troubles.all()) {
            seen = seen.with(trouble);
        }
        shown.set(failure.isEmpty() ? seen : seen.with(new Trouble(Trouble.Kind.NOT_SAVED, failure)));
    }

    /** Tells {@code reply} when the events entered so far are on disk, or that they could not be saved. */
    public void tellWhetherSaved(Request.Reply reply) {
        journal.whenWritten(reply);
    }
}
