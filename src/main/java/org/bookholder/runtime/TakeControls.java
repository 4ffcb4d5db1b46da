package org.bookholder.runtime;

import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.session.Mover;

/** What may be done with the takes of a session. Confined to the session's thread. */
interface TakeControls {
    /** Whether a take is rolling. */
    boolean rolling();

    /** Whether the rolling take was asked to end and has not yet. */
    boolean ending();

    /** Holds the rolling take, if it is not held. */
    void hold();

    /** Continues the rolling take, if it is held. */
    void resume();

    /** Moves the reading position. */
    void goTo(ReadingPosition position, Mover mover);

    /** Rolls a take from a position, after the one that is rolling; returns whether the end of that one is pending. */
    boolean next(ReadingPosition from);

    /** Cuts the rolling take; returns whether there was one, whose end is then pending. */
    boolean cut();
}
