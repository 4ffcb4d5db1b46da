package org.bookholder.runtime.record;

import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.bookholder.journal.event.Journal;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.Latest;
import org.bookholder.session.Request;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
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
    private String notice = "";

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

    /** Shows views a sentence beside whatever is wrong, until it is replaced; empty for none. */
    public void notice(String sentence) {
        notice = sentence;
        show();
    }

    private void show() {
        String trouble = Stream.of(unsaved == 0 ? "" : "Notes are not being saved (" + failure + ").", notice)
                .filter(sentence -> !sentence.isEmpty())
                .collect(Collectors.joining(" "));
        shown.set(trouble.isEmpty() ? state : state.withTrouble((trouble + " " + state.trouble()).strip()));
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
