package org.bookholder.wording;

import org.bookholder.session.PickupRound;
import org.bookholder.session.SessionState;

/** Puts the progress of the pickup round into a few words. */
public final class RoundText {
    private RoundText() {}

    /** The progress; empty if there is no round. */
    public static String of(SessionState state) {
        PickupRound round = state.round();
        if (!round.isOn()) {
            // Asked for every picture: nothing is to be counted, and no object made, where there is no round.
            return "";
        }
        int left = state.lines().pickups().size();
        return switch (round.step()) {
            case OFF -> "";
            case READING -> "pickup " + (round.clean() + 1) + " of " + (round.clean() + Math.max(1, left));
            case LISTENING -> "listening back";
            case TICKED -> left == 0 ? "clean, and the last" : "clean";
            case AGAIN -> "once more: " + round.why();
        };
    }
}
