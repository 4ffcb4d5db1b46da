package org.bookholder.app.reading;

import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import org.bookholder.session.SessionState;

/**
 * The states of a session with something added for views. The same state gives the same object, so that views see that
 * nothing has changed. Safe for several threads.
 */
final class ShownStates implements Supplier<SessionState> {
    private final Supplier<SessionState> states;
    private final UnaryOperator<SessionState> adding;
    private SessionState seen;
    private SessionState shown;

    /** Adds to {@code states} by {@code adding}, once to each. */
    ShownStates(Supplier<SessionState> states, UnaryOperator<SessionState> adding) {
        this.states = states;
        this.adding = adding;
        seen = states.get();
        shown = adding.apply(seen);
    }

    @Override
    @SuppressWarnings("ReferenceEquality")
    public synchronized SessionState get() {
        SessionState now = states.get();
        if (now != seen) {
            seen = now;
            shown = adding.apply(now);
        }
        return shown;
    }
}
