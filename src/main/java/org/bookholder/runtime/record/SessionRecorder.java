package org.bookholder.runtime.record;

import org.bookholder.runtime.stage.Latest;
import org.bookholder.session.Request;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.session.Trouble;
import org.bookholder.session.Troubles;

/**
 * Records events: each one changes the state and is passed to the journal. If the journal fails, everything continues
 * in memory. Confined to one thread, except the displayed state.
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

    /** The state after all events entered. */
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

    /** Shows views a trouble that is not in the events, until it is {@link #mended}. */
    public void amiss(Trouble trouble) {
        troubles = troubles.with(trouble);
        show();
    }

    /** Removes the trouble of this kind. */
    public void mended(Trouble.Kind kind) {
        troubles = troubles.without(kind);
        show();
    }

    /** Whether a trouble of this kind is shown that is not in the events. */
    public boolean isAmiss(Trouble.Kind kind) {
        return troubles.all().stream().anyMatch(trouble -> trouble.kind() == kind);
    }

    /** Updates the trouble about notes that cannot be saved; call it regularly. */
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

    /** Calls {@code reply} when the events entered so far are on disk, or when they could not be saved. */
    public void tellWhetherSaved(Request.Reply reply) {
        journal.whenWritten(reply);
    }
}
