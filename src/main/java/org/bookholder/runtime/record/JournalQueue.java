package org.bookholder.runtime.record;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import org.bookholder.journal.event.Journal;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.Latest;
import org.bookholder.session.Request;
import org.bookholder.session.SessionEvent;
import org.bookholder.timing.StreamTime;

/**
 * The queue of events from the session to its journal, so that the session never waits for a disk. Nothing is dropped:
 * while the disk fails, the events stay in memory, in order. One thread adds and another writes; queries are allowed on
 * any thread.
 */
public final class JournalQueue {
    /** A larger transaction would take long to repeat. */
    private static final int LARGEST_BATCH = 1000;

    private final ConcurrentLinkedQueue<Entry> added = new ConcurrentLinkedQueue<>();
    private final AtomicLong entered = new AtomicLong();
    private final AtomicInteger waiters = new AtomicInteger();
    private final Latest<Written> written = new Latest<>(new Written(0, "", StreamTime.ZERO));

    /** Confined to the writing thread. */
    private final Deque<Entry> waiting = new ArrayDeque<>();

    /** An event, or a reply that waits until all events before it are written. */
    private sealed interface Entry {
        record Event(SessionEvent event) implements Entry {}

        record Waiter(Request.Reply reply) implements Entry {}
    }

    /**
     * What has been written.
     *
     * @param events number of events, from the first one added, that are forced to disk
     * @param failure why the next ones could not be written, for people; empty if nothing is wrong
     * @param from when the first of those happened
     */
    private record Written(long events, String failure, StreamTime from) {}

    /** Adds an event; returns its number, from 1. Never blocks. */
    public long add(SessionEvent event) {
        added.add(new Entry.Event(event));
        return entered.incrementAndGet();
    }

    /** Calls {@code reply} when all events added so far are forced to disk, or when they could not be saved yet. */
    public void whenWritten(Request.Reply reply) {
        waiters.incrementAndGet();
        added.add(new Entry.Waiter(reply));
    }

    /** Whether a reply is waiting. */
    boolean awaited() {
        return waiters.get() > 0;
    }

    /** Number of events added. */
    public long entered() {
        return entered.get();
    }

    /** Number of events, from the first, that are forced to disk. */
    public long written() {
        return written.get().events();
    }

    /** Why events cannot be written at present, for people; empty if they can. */
    public String failure() {
        return written.get().failure();
    }

    /** What is not saved, and why, for people; empty if everything can be. */
    public String unsaved() {
        Written now = written.get();
        return now.failure().isEmpty()
                ? ""
                : (entered.get() - now.events()) + " notes, from " + Clocks.minutes(now.from()) + " on, are not saved ("
                        + now.failure() + ")";
    }

    /** Writes one batch of waiting entries; returns their number, 0 if there are none or the disk fails. */
    int write(Journal journal) {
        for (Entry next = added.poll(); next != null; next = added.poll()) {
            waiting.add(next);
        }
        List<Entry> batch = waiting.stream().limit(LARGEST_BATCH).toList();
        if (batch.isEmpty()) {
            return 0;
        }
        List<SessionEvent> events = events(batch);
        try {
            if (!events.isEmpty()) {
                journal.append(events);
            }
        } catch (ProblemException e) {
            String why = e.getMessage();
            written.set(new Written(written(), why, events.get(0).at()));
            answerUnsaved(why);
            return 0;
        }
        for (int i = 0; i < batch.size(); i++) {
            waiting.remove();
        }
        written.set(new Written(written() + events.size(), "", StreamTime.ZERO));
        replies(batch).forEach(Request.Reply::done);
        return batch.size();
    }

    private void answerUnsaved(String why) {
        List<Entry> all = new ArrayList<>(waiting);
        waiting.removeIf(entry -> entry instanceof Entry.Waiter);
        replies(all).forEach(reply -> reply.failed("Done, but not saved: " + why + "."));
    }

    private static List<SessionEvent> events(List<Entry> entries) {
        return entries.stream()
                .filter(Entry.Event.class::isInstance)
                .map(entry -> ((Entry.Event) entry).event())
                .toList();
    }

    private List<Request.Reply> replies(List<Entry> entries) {
        List<Request.Reply> replies = entries.stream()
                .filter(Entry.Waiter.class::isInstance)
                .map(entry -> ((Entry.Waiter) entry).reply())
                .toList();
        waiters.addAndGet(-replies.size());
        return replies;
    }
}
