package org.bookholder.session;

import java.util.List;
import java.util.Optional;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.pace.PaceRules;
import org.bookholder.script.model.Script;
import org.bookholder.timing.StreamTime;
import org.pcollections.TreePVector;

/**
 * The one function that derives a session's state from its events.
 *
 * <p>It is pure: the same events give the same state, on any thread and at any time. The cost of an event does not grow
 * with the script or the session; only settling a whole take takes time proportional to the take.
 */
public final class Session {
    private Session() {}

    /** The state before any event. */
    public static SessionState begin(Script script, FatigueLimits limits) {
        return begin(script, limits, PaceRules.defaults());
    }

    /** The state before any event, with pace measured by {@code rules}. */
    public static SessionState begin(Script script, FatigueLimits limits, PaceRules rules) {
        Accumulators sums = Accumulators.begin(script, rules, limits);
        return new SessionState(
                script,
                StreamTime.ZERO,
                Takes.NONE,
                Following.from(ReadingPosition.START),
                new Lines(sums.heard().lines(), TreePVector.empty()),
                new Measures(
                        sums.pace().reading(sums.counts(), ReadingPosition.START, script.settings()),
                        sums.fatigue().report(StreamTime.ZERO),
                        Sound.NONE),
                Troubles.NONE,
                Remarks.NONE,
                PickupRound.NONE,
                Optional.empty(),
                sums);
    }

    /** The state after an event. */
    public static SessionState apply(SessionState state, SessionEvent event) {
        return apply(state, List.of(event));
    }

    /**
     * The state after several events. The result is the same as applying them one by one, but faster, because the
     * states in between are not built.
     */
    public static SessionState apply(SessionState state, List<SessionEvent> events) {
        if (events.isEmpty()) {
            return state;
        }
        StateBuilder builder = new StateBuilder(state);
        events.forEach(builder::take);
        return builder.toState(state.sums().revision() + events.size());
    }
}
