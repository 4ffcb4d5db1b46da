package org.bookholder.testing;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import org.bookholder.journal.event.Journal;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;

/** A journal in memory, whose disk can be filled and emptied. */
public final class FakeJournal implements Journal {
    private final List<SessionEvent> events = new ArrayList<>();
    private final Deque<SessionEvent> unwritten = new ArrayDeque<>();
    private int room = Integer.MAX_VALUE;

    /** From now on the disk takes {@code count} more events. */
    public void room(int count) {
        room = count;
    }

    @Override
    public void append(SessionEvent event) throws ProblemException {
        unwritten.add(event);
        while (!unwritten.isEmpty()) {
            if (room == 0) {
                throw new ProblemException("the disk is full", "journal.db", "make room");
            }
            room--;
            events.add(unwritten.remove());
        }
    }

    @Override
    public List<SessionEvent> events() {
        return List.copyOf(events);
    }

    /** The events of one kind. */
    public <E extends SessionEvent> List<E> events(Class<E> kind) {
        return events.stream().filter(kind::isInstance).map(kind::cast).toList();
    }

    @Override
    public void close() {
        // nothing to let go
    }
}
