package org.bookholder.testing;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.bookholder.journal.event.Journal;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;

/** A journal in memory, whose disk can be filled and emptied. */
public final class FakeJournal implements Journal {
    private final List<SessionEvent> events = new ArrayList<>();
    private int room = Integer.MAX_VALUE;
    private int batches;
    private boolean faulty;
    private Predicate<SessionEvent> unwritable = event -> false;
    private Runnable onAppend = () -> {};

    /** From now on the disk takes {@code count} more events. */
    public void room(int count) {
        room = count;
    }

    /** From now on each attempt to write ends in a fault of the program. */
    public void faulty() {
        faulty = true;
    }

    /** From now on such events can never be written. */
    public void unwritable(Predicate<SessionEvent> events) {
        unwritable = events;
    }

    /** Is called by whoever writes. */
    void onAppend(Runnable hook) {
        onAppend = hook;
    }

    /** How many batches were written. */
    public int batches() {
        return batches;
    }

    @Override
    public void append(List<SessionEvent> batch) throws ProblemException {
        onAppend.run();
        if (faulty) {
            throw new IllegalStateException("a planted fault");
        }
        if (batch.stream().anyMatch(unwritable)) {
            throw new IllegalArgumentException("a planted event that can never be written");
        }
        if (room < batch.size()) {
            throw new ProblemException("the disk is full", "journal.db", "make room");
        }
        room -= batch.size();
        events.addAll(batch);
        batches++;
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
