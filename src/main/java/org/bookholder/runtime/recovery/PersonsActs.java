package org.bookholder.runtime.recovery;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.bookholder.follow.Follower;
import org.bookholder.follow.model.FollowEvent;
import org.bookholder.runtime.take.EvidenceOrder.Evidence;
import org.bookholder.runtime.take.EvidenceOrder.Kind;
import org.bookholder.session.Mover;
import org.bookholder.session.SessionEvent;

/** People's actions in a take that its follower has to know: moves of the position and holds. */
final class PersonsActs {
    private PersonsActs() {}

    /**
     * All actions with their times. Their effects are in the journal already, so the evidence itself produces no
     * findings.
     */
    static List<Evidence> of(UnsettledTake take) {
        List<Evidence> acts = new ArrayList<>();
        for (SessionEvent event : take.events()) {
            if (event instanceof SessionEvent.Held) {
                acts.add(act(event, follower -> follower.hold(event.at())));
            } else if (event instanceof SessionEvent.Resumed) {
                acts.add(act(event, follower -> follower.resume(event.at())));
            } else if (event instanceof SessionEvent.PositionMoved moved && moved.mover() != Mover.VOICE) {
                acts.add(act(event, follower -> follower.move(moved.at(), moved.position())));
            } else if (event instanceof SessionEvent.TakeEnded) {
                break;
            }
        }
        return acts;
    }

    private static Evidence act(SessionEvent event, Function<Follower, List<FollowEvent>> act) {
        return new Evidence(
                event.at(),
                Kind.PERSON,
                follower -> act.apply(follower).stream()
                        .filter(FollowEvent.NotJudged.class::isInstance)
                        .toList());
    }
}
