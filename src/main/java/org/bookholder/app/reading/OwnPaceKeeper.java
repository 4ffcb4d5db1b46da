package org.bookholder.app.reading;

import java.util.function.Consumer;
import java.util.function.Supplier;
import org.bookholder.app.session.TargetPaces;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.PaceSource;
import org.bookholder.script.model.ScriptSettings;
import org.bookholder.session.SessionState;

/**
 * Keeps the pace that the presenter takes as their target, for their other lessons: as soon as it is taken, so that a kill does
 * not lose it. Confined to the thread that shows the reading.
 */
final class OwnPaceKeeper {
    private final TargetPaces paces;
    private final Supplier<SessionState> states;
    private final Consumer<String> told;
    private ScriptSettings seen;

    /** Watches {@code states} from now on; {@code told} is told why a pace could not be kept. */
    OwnPaceKeeper(TargetPaces paces, Supplier<SessionState> states, Consumer<String> told) {
        this.paces = paces;
        this.states = states;
        this.told = told;
        this.seen = settings();
    }

    /** To be called often. */
    void look() {
        ScriptSettings now = settings();
        if (!now.equals(seen)) {
            seen = now;
            keep(now);
        }
    }

    private ScriptSettings settings() {
        return states.get().script().settings();
    }

    private void keep(ScriptSettings read) {
        if (read.paceSource() == PaceSource.OWN && paces.own().orElse(0) != read.targetPace()) {
            try {
                paces.keep(Integer.toString(read.targetPace()));
            } catch (ProblemException e) {
                told.accept(e.getMessage());
            }
        }
    }
}
