package org.bookholder.runtime.record;

import java.util.List;
import org.bookholder.desk.LiveHistory;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.journal.Replay;
import org.bookholder.script.model.Script;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;

/**
 * The result of replaying a session's events.
 *
 * @param state the final state
 * @param trail the history that a desk shows
 */
public record ReplayedSession(SessionState state, LiveHistory trail) {
    /** Replays the events of a session that began with {@code script}. */
    public static ReplayedSession of(Script script, FatigueLimits limits, List<SessionEvent> events) {
        return Replay.state(
                new ReplayedSession(Session.begin(script, limits), LiveHistory.NONE), events, ReplayedSession::after);
    }

    /** The same after one more event. */
    ReplayedSession after(SessionEvent event) {
        SessionState next = Session.apply(state, event);
        return new ReplayedSession(next, trail.after(next));
    }
}
