package org.bookholder.journal;

import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import org.bookholder.session.SessionEvent;

/** Works out a session's state from its events. */
public final class Replay {
    private Replay() {}

    /**
     * The state after a sequence of events.
     *
     * @param begin the state before anything happened
     * @param events the events, in order
     * @param apply the state after one event
     */
    public static <S> S state(S begin, List<SessionEvent> events, BiFunction<S, SessionEvent, S> apply) {
        S state = begin;
        for (SessionEvent event : events) {
            state = apply.apply(state, event);
        }
        return state;
    }

    /** The script as it was when the session began, and where it came from; empty if the session never began. */
    public static Optional<SessionEvent.Opened> firstOpened(List<SessionEvent> events) {
        return events.stream()
                .filter(SessionEvent.Opened.class::isInstance)
                .map(SessionEvent.Opened.class::cast)
                .findFirst();
    }

    /** The script's text at the end of {@code events}; empty if the session never began. */
    public static Optional<String> lastText(List<SessionEvent> events) {
        Optional<String> text = Optional.empty();
        for (SessionEvent event : events) {
            if (event instanceof SessionEvent.Opened opened) {
                text = Optional.of(opened.scriptText());
            } else if (event instanceof SessionEvent.TextChanged changed) {
                text = Optional.of(changed.scriptText());
            }
        }
        return text;
    }
}
