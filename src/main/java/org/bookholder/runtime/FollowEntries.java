package org.bookholder.runtime;

import org.bookholder.follow.FollowEvent;
import org.bookholder.session.Mover;
import org.bookholder.session.SessionEvent;

/** Enters what following found out. */
final class FollowEntries implements FollowEvent.Listener {
    private final Ledger ledger;
    private final Mover mover;

    FollowEntries(Ledger ledger, Mover mover) {
        this.ledger = ledger;
        this.mover = mover;
    }

    @Override
    public void moved(FollowEvent.Moved event) {
        ledger.enter(new SessionEvent.PositionMoved(event.at(), event.position(), mover, event.wordsRead()));
    }

    @Override
    public void changed(FollowEvent.Changed event) {
        ledger.enter(new SessionEvent.FollowChanged(event.at(), event.state()));
    }

    @Override
    public void attemptSettled(FollowEvent.AttemptSettled event) {
        ledger.enter(new SessionEvent.AttemptSettled(event.at(), event.attempt()));
    }

    @Override
    public void takeSettled(FollowEvent.TakeSettled event) {
        ledger.enter(new SessionEvent.TakeSettled(event.at(), event.take(), event.attempts(), event.asides()));
    }
}
