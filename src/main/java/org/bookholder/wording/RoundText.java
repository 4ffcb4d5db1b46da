package org.bookholder.wording;

import org.bookholder.session.PickupRound;
import org.bookholder.session.SessionState;

/** Puts the progress of the pickup round into a few words. */
public final class RoundText {
    private RoundText() {}

    /** The progress; empty if there is no round. */
    public static String of(SessionState state) {
        PickupRound round = state.round();
        return switch (round.step()) {
            case OFF -> "";
            case READING -> "pickup " + (round.clean() + 1) + " of " + (round.clean() + Math.max(1, left(state)));
            case LISTENING -> "listening back";
            case TICKED -> left(state) == 0 ? "clean, and the last" : "clean";
            case AGAIN -> "once more: " + round.why();
        };
    }

    private static int left(SessionState state) {
        return state.lines().pickups().size();
    }
}
