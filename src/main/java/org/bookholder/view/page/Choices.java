package org.bookholder.view.page;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.session.OwnPace;
import org.bookholder.session.SessionState;
import org.bookholder.session.UpNext;
import org.bookholder.view.input.Action;
import org.bookholder.view.input.KeyMap;
import org.bookholder.wording.PaceText;

/** What can be done when a lesson or a take is over: each by one key. */
final class Choices {
    private Choices() {}

    /** The choices, one on each line, each with its key. */
    static List<String> of(SessionState state, KeyMap keys) {
        List<String> choices = new ArrayList<>();
        int pickups = state.lines().pickups().size();
        if (pickups > 0) {
            choices.add(keys.first(Action.ROUND) + ": pick up " + (pickups == 1 ? "this line" : "these " + pickups)
                    + " now");
        }
        state.upNext()
                .filter(UpNext::isLeft)
                .ifPresent(next -> choices.add(keys.first(Action.NEXT_LESSON) + ": next lesson, “" + next.title()
                        + "”, about " + Math.max(1, Math.round(next.length().toSeconds() / 60.0)) + " min"
                        + (next.more() == 0 ? ", the last" : ", then " + next.more() + " more")));
        boolean resting = state.remarks().breakSince().isPresent();
        String pause = keys.first(Action.BREAK) + (resting ? ": end the break" : ": break");
        String end = keys.first(Action.QUIT)
                + state.upNext()
                        .map(next -> ": end the day"
                                + (next.isLeft() && !next.dayEnds().isEmpty()
                                        ? " (with all lessons about " + next.dayEnds() + ")"
                                        : ""))
                        .orElse(": end the session");
        choices.add(pause + "  ·  " + end);
        OwnPace.offered(state)
                .ifPresent(pace -> choices.add(keys.first(Action.OWN_PACE) + ": make " + pace
                        + " words a minute your target, now " + PaceText.target(state)));
        return choices;
    }
}
