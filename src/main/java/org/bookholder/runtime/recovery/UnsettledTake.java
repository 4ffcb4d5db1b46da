package org.bookholder.runtime.recovery;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.bookholder.follow.model.Attempt;
import org.bookholder.journal.Replay;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.session.Renumbering;
import org.bookholder.session.SessionEvent;
import org.bookholder.timing.StreamTime;

/**
 * An unsettled take, from its journal.
 *
 * @param started its start event
 * @param script the script that was read in it
 * @param changes the changes of the script since
 * @param events the events from its start to the start of the next take, in order
 */
record UnsettledTake(
        SessionEvent.TakeStarted started, Script script, List<Renumbering> changes, List<SessionEvent> events) {
    /** Copies the lists. */
    UnsettledTake {
        changes = List.copyOf(changes);
        events = List.copyOf(events);
    }

    /** The numbers of the unsettled takes, in order. */
    static List<Integer> numbers(List<SessionEvent> events) {
        List<Integer> open = new ArrayList<>();
        for (SessionEvent event : events) {
            if (event instanceof SessionEvent.TakeStarted take) {
                open.add(take.take());
            } else if (event instanceof SessionEvent.TakeSettled take) {
                open.remove((Integer) take.take());
            }
        }
        return open;
    }

    /**
     * The unsettled takes of a session, in order.
     *
     * @throws ProblemException if the script that the journal holds cannot be read
     */
    static List<UnsettledTake> of(List<SessionEvent> events) throws ProblemException {
        Optional<SessionEvent.Opened> opened = Replay.firstOpened(events);
        if (opened.isEmpty()) {
            return List.of();
        }
        String source = opened.get().source();
        Script script = opened.get().script();
        Map<Integer, Builder> open = new LinkedHashMap<>();
        Builder last = null;
        for (SessionEvent event : events) {
            if (event instanceof SessionEvent.TakeStarted started) {
                last = new Builder(started, script);
                open.put(started.take(), last);
            } else if (event instanceof SessionEvent.TakeSettled settled) {
                open.remove(settled.take());
            } else if (event instanceof SessionEvent.TextChanged changed) {
                Script next = changed.script(source);
                Renumbering lines = Renumbering.between(script, next);
                open.values().forEach(take -> take.changes.add(lines));
                script = next;
            }
            if (last != null) {
                last.events.add(event);
            }
        }
        return open.values().stream().map(Builder::build).toList();
    }

    int number() {
        return started.take();
    }

    StreamTime start() {
        return started.at();
    }

    /** How far following had got when it was interrupted. */
    StreamTime followedTo() {
        return last(true);
    }

    /** Where it ended: according to the journal, or after the last known event or sound. */
    StreamTime end(StreamTime recordedTo) {
        return events.stream()
                .filter(SessionEvent.TakeEnded.class::isInstance)
                .map(SessionEvent::at)
                .findFirst()
                .orElseGet(() -> StreamTime.max(recordedTo, last(false)));
    }

    /** The time of the last event before the next take. */
    StreamTime seenTo() {
        return last(false);
    }

    /** The attempts that were settled before the interruption and begin at {@code from} or later, in order. */
    List<Attempt> attemptsFrom(StreamTime from) {
        Map<Integer, Attempt> settled = new TreeMap<>();
        for (SessionEvent event : events) {
            if (event instanceof SessionEvent.TextChanged) {
                // From here on, line numbers differ from those of the text that was read.
                break;
            }
            if (event instanceof SessionEvent.AttemptSettled one
                    && one.attempt().take() == number()) {
                settled.put(one.attempt().ordinal(), one.attempt());
            }
        }
        return settled.values().stream()
                .filter(attempt -> !attempt.start().isBefore(from))
                .toList();
    }

    private StreamTime last(boolean followed) {
        return events.stream()
                .filter(event -> !followed
                        || event instanceof SessionEvent.PositionMoved
                        || event instanceof SessionEvent.FollowChanged
                        || event instanceof SessionEvent.AttemptSettled)
                .map(SessionEvent::at)
                .reduce(started.at(), StreamTime::max);
    }

    private static final class Builder {
        private final SessionEvent.TakeStarted started;
        private final Script script;
        private final List<Renumbering> changes = new ArrayList<>();
        private final List<SessionEvent> events = new ArrayList<>();

        Builder(SessionEvent.TakeStarted started, Script script) {
            this.started = started;
            this.script = script;
        }

        UnsettledTake build() {
            return new UnsettledTake(started, script, changes, events);
        }
    }
}
