package org.bookholder.session;

import java.util.OptionalInt;
import org.bookholder.script.model.PaceSource;
import org.bookholder.script.model.ScriptSettings;

/** The presenter's measured pace, which is offered as their target. */
public final class OwnPace {
    /** Our choice: fewer words than a short lesson has say little. */
    private static final int FEWEST_WORDS = 100;

    /** Our choice: half of what the window calls "on pace"; a smaller difference is no reason to ask. */
    private static final double DIFFERENT = 0.05;

    private OwnPace() {}

    /** The pace to offer, in words per minute; empty if script or course set one, or there is nothing new to offer. */
    public static OptionalInt offered(SessionState state) {
        ScriptSettings settings = state.script().settings();
        double measured = state.measures().pace().lesson();
        boolean free = settings.paceSource() == PaceSource.OWN || settings.paceSource() == PaceSource.USUAL;
        if (!free || Double.isNaN(measured) || state.sums().pace().lesson().words() < FEWEST_WORDS) {
            return OptionalInt.empty();
        }
        int pace = (int) Math.round(measured);
        boolean possible = pace >= ScriptSettings.MIN_PACE && pace <= ScriptSettings.MAX_PACE;
        boolean another = Math.abs(pace - settings.targetPace()) >= DIFFERENT * settings.targetPace();
        return possible && another ? OptionalInt.of(pace) : OptionalInt.empty();
    }
}
