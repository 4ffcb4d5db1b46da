package org.bookholder.runtime.take;

import java.util.List;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.FollowEvent;
import org.bookholder.follow.model.UnjudgedStretch;
import org.bookholder.runtime.record.SessionRecorder;
import org.bookholder.runtime.stage.OptionalWork;
import org.bookholder.session.Mover;
import org.bookholder.session.Renumbering;
import org.bookholder.session.SessionEvent;

/** Records the follower's findings with current line numbers. Confined to the recorder's thread. */
public final class FollowEntries implements FollowEvent.Listener {
    private final SessionRecorder ledger;
    private final Mover mover;
    private final List<Renumbering> changes;
    private final SpoiledLines spoiled;
    private final OptionalWork marking;

    /** Creates the entries of a take after which the script was changed as given; {@code marking} may fail. */
    public FollowEntries(
            SessionRecorder ledger,
            Mover mover,
            List<Renumbering> changes,
            SpoiledLines spoiled,
            OptionalWork marking) {
        this.marking = marking;
        this.ledger = ledger;
        this.mover = mover;
        this.changes = changes;
        this.spoiled = spoiled;
    }

    @Override
    public void moved(FollowEvent.Moved event) {
        if (changes.isEmpty()) {
            ledger.enter(new SessionEvent.PositionMoved(event.at(), event.position(), mover, event.wordsRead()));
        }
    }

    @Override
    public void changed(FollowEvent.Changed event) {
        ledger.enter(new SessionEvent.FollowChanged(event.at(), event.state()));
    }

    @Override
    public void attemptSettled(FollowEvent.AttemptSettled event) {
        List<Attempt> attempts = now(List.of(event.attempt()));
        attempts.forEach(attempt -> ledger.enter(new SessionEvent.AttemptSettled(event.at(), attempt)));
        mark(attempts);
    }

    @Override
    public void takeSettled(FollowEvent.TakeSettled event) {
        List<Attempt> attempts = now(event.attempts());
        ledger.enter(new SessionEvent.TakeSettled(event.at(), event.take(), attempts, asides(event.asides())));
        mark(attempts);
    }

    @Override
    public void asidesHeard(FollowEvent.AsidesHeard event) {
        ledger.enter(new SessionEvent.AsidesHeard(event.at(), event.take(), asides(event.asides())));
    }

    @Override
    public void notJudged(FollowEvent.NotJudged event) {
        UnjudgedStretch stretch = event.stretch();
        for (Renumbering change : changes) {
            stretch = change.stretch(stretch);
        }
        ledger.enter(new SessionEvent.NotJudged(event.at(), stretch, event.log()));
    }

    @Override
    public void understood(FollowEvent.Understood event) {
        ledger.enter(new SessionEvent.Understood(event.at(), event.badly(), event.share()));
    }

    private void mark(List<Attempt> attempts) {
        marking.get(() -> spoiled.marks(ledger.state(), attempts), List.<SessionEvent>of())
                .forEach(ledger::enter);
    }

    private List<Aside> asides(List<Aside> asides) {
        List<Aside> now = asides;
        for (Renumbering change : changes) {
            now = change.asides(now);
        }
        return now;
    }

    private List<Attempt> now(List<Attempt> attempts) {
        List<Attempt> now = attempts;
        for (Renumbering change : changes) {
            now = change.attempts(now);
        }
        return now;
    }
}
