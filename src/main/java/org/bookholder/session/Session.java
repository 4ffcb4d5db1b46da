package org.bookholder.session;

import java.util.List;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.FollowState;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.pace.PaceRules;
import org.bookholder.script.model.Script;
import org.bookholder.session.SessionState.Sound;
import org.bookholder.timing.StreamTime;
import org.pcollections.TreePVector;

/**
 * The one function from what happened to where a session stands.
 *
 * <p>Pure: the same events give the same state, on any thread and any day. The cost of an event does not grow with the
 * script or the session; only settling a whole take costs in proportion to the take.
 */
public final class Session {
    /** The level of digital silence, in dBFS. */
    private static final double SILENCE = -120;

    private Session() {}

    /** The state before anything happened. */
    public static SessionState begin(Script script, FatigueLimits limits) {
        return begin(script, limits, PaceRules.defaults());
    }

    /** The state before anything happened, with pace measured by {@code rules}. */
    public static SessionState begin(Script script, FatigueLimits limits, PaceRules rules) {
        Accumulators tallies = Accumulators.begin(script, rules, limits);
        return new SessionState(
                script,
                StreamTime.ZERO,
                TreePVector.empty(),
                false,
                ReadingPosition.START,
                Mover.VOICE,
                FollowState.FOLLOWING,
                false,
                tallies.book().lines(),
                TreePVector.empty(),
                tallies.pace()
                        .reading(0, tallies.counts().total(), script.settings().targetPace()),
                tallies.fatigue().report(StreamTime.ZERO),
                new Sound(SILENCE, SILENCE, 0, StreamTime.ZERO),
                "",
                tallies);
    }

    /** The state after an event. */
    public static SessionState apply(SessionState state, SessionEvent event) {
        return apply(state, List.of(event));
    }

    /** The state after events in order: the same as after one by one, without the states between, which cost most of it. */
    public static SessionState apply(SessionState state, List<SessionEvent> events) {
        if (events.isEmpty()) {
            return state;
        }
        StateBuilder draft = new StateBuilder(state);
        events.forEach(draft::take);
        return draft.toState(events.size());
    }
}
