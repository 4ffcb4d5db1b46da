package org.bookholder.runtime.record;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import org.bookholder.journal.event.Journal;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.FaultListener;
import org.bookholder.runtime.stage.Latest;
import org.bookholder.runtime.stage.StageFault;
import org.bookholder.session.Request;
import org.bookholder.session.SessionEvent;
import org.bookholder.timing.StreamTime;

/**
 * The queue of events from the session to its journal, so that the session never waits for a disk. Nothing is dropped:
 * while the disk fails, the events stay in memory, in order. An event that can never be written is set aside, so that it
 * does not block the others. One thread adds and another writes; queries are allowed on any thread.
 */
public final class JournalQueue {
    /** The role under which an event that can never be written is reported to a {@link FaultListener}. */
    public static final String ONE_NOTE = "one note";

    /** A larger transaction would take long to repeat. */
    private static final int LARGEST_BATCH = 1000;

    private static final Aside NOTHING_ASIDE = new Aside(0, StreamTime.ZERO);

    private final ConcurrentLinkedQueue<Entry> added = new ConcurrentLinkedQueue<>();
    private final AtomicLong entered = new AtomicLong();
    private final AtomicInteger waiters = new AtomicInteger();
    private final Latest<Written> written = new Latest<>(new Written(0, NOTHING_ASIDE, "", "", StreamTime.ZERO));

    /** Confined to the writing thread. */
    private final Deque<Entry> waiting = new ArrayDeque<>();

    /** Confined to the writing thread. */
    private Optional<SessionEvent> lastWritten = Optional.empty();

    /** Whether an event was set aside since the last reply; confined to the writing thread. */
    private boolean asideUntold;

    /** Whether the second place has what waits, or a part of it; confined to the writing thread. */
    private boolean copied;

    /** An event, or a reply that waits until all events before it are written. */
    private sealed interface Entry {
        record Event(SessionEvent event) implements Entry {}

        record Waiter(Request.Reply reply) implements Entry {}
    }

    /**
     * What has been written.
     *
     * @param events number of events that are forced to disk
     * @param aside the events that can never be written
     * @param failure why the next ones could not be written, for people; empty if nothing is wrong
     * @param meanwhile what becomes of those until they can be, for people; empty if nothing is wrong
     * @param from when the first of those happened
     */
    private record Written(long events, Aside aside, String failure, String meanwhile, StreamTime from) {
        Written refused(String why, String copies, StreamTime first) {
            return new Written(events, aside, why, copies, first);
        }

        Written with(long more) {
            return new Written(events + more, aside, "", "", StreamTime.ZERO);
        }

        String trouble() {
            return failure.isEmpty() ? "" : failure + meanwhile;
        }
    }

    /** Number of events that can never be written, and when the first of them happened. */
    private record Aside(long events, StreamTime from) {
        Aside plus(SessionEvent event) {
            return new Aside(events + 1, events == 0 ? event.at() : from);
        }
    }

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

    /**
     * Copies what waits to the second place, so that it outlasts a kill; here it waits all the same. Called by the writing thread after
     * the disk has refused it.
     */
    void copyTo(Overflow overflow) {
        if (overflow == Overflow.NONE) {
            return;
        }
        String meanwhile;
        try {
            copied = true;
            overflow.keep(events(waiting), lastWritten);
            meanwhile = "; notes are kept in " + overflow.place() + " meanwhile";
        } catch (ProblemException e) {
            meanwhile = "; nowhere else is room for notes, so that they are in memory only";
        }
        Written now = written.get();
        written.set(now.refused(now.failure(), meanwhile, now.from()));
    }

    /** Removes the copies if all is written. Called by the writing thread. */
    void dropCopies(Overflow overflow) {
        if (copied && waiting.isEmpty()) {
            copied = false;
            try {
                overflow.keep(List.of(), lastWritten);
            } catch (ProblemException e) {
                // They stay there. When they are taken in, those that the journal has are not added again.
            }
        }
    }

    /**
     * Saves the events that are not written in a second place, which may take further ones that were written and are gone. To be
     * called when no thread writes any more. What the second place refuses stays here, with its reason.
     *
     * @return how many events are in the second place
     */
    public int keepElsewhere(Overflow overflow) {
        List<Entry> rest = new ArrayList<>(waiting);
        rest.addAll(added);
        try {
            int kept = overflow.keep(events(rest), lastWritten);
            waiting.clear();
            added.clear();
            written.set(written.get().with(0));
            return kept;
        } catch (ProblemException e) {
            Written now = written.get();
            String why =
                    now.failure().isEmpty() ? e.getMessage() : now.failure() + "; no second place takes them either";
            written.set(now.refused(why, "", now.from()));
            return 0;
        }
    }

    /** Number of events that are forced to disk. */
    public long written() {
        return written.get().events();
    }

    /** Why events cannot be written at present, for people; empty if they can. */
    public String failure() {
        return written.get().trouble();
    }

    /** What is not saved, and why, for people; empty if everything can be. */
    public String unsaved() {
        Written now = written.get();
        Aside aside = now.aside();
        List<String> parts = new ArrayList<>();
        if (!now.failure().isEmpty()) {
            long refused = entered.get() - now.events() - aside.events();
            parts.add(notes(refused, now.from()) + (refused == 1 ? " is" : " are") + " not saved (" + now.trouble()
                    + ")");
        }
        if (aside.events() > 0) {
            parts.add(notes(aside.events(), aside.from()) + " cannot be saved (a fault of the program)");
        }
        return String.join("; ", parts);
    }

    private static String notes(long count, StreamTime from) {
        return count + (count == 1 ? " note" : " notes") + ", from " + Clocks.minutes(from) + " on,";
    }

    /**
     * Writes one batch of waiting entries; returns their number, 0 if there are none or the disk fails.
     *
     * @param faults told of an event that can never be written, which is set aside
     */
    int write(Journal journal, FaultListener faults) {
        for (Entry next = added.poll(); next != null; next = added.poll()) {
            waiting.add(next);
        }
        int size = Math.min(waiting.size(), LARGEST_BATCH);
        while (size > 0) {
            try {
                return write(journal, waiting.stream().limit(size).toList());
            } catch (IllegalArgumentException e) {
                if (size == 1) {
                    setAside(e, faults);
                    return 1;
                }
                // One of them can never be written: in smaller batches it is found, and the others are written.
                size /= 2;
            }
        }
        return 0;
    }

    private int write(Journal journal, List<Entry> batch) {
        List<SessionEvent> events = events(batch);
        try {
            if (!events.isEmpty()) {
                journal.append(events);
            }
        } catch (ProblemException e) {
            String why = e.getMessage();
            Written before = written.get();
            written.set(before.refused(why, before.meanwhile(), events.get(0).at()));
            answerUnsaved(why);
            return 0;
        }
        for (int i = 0; i < batch.size(); i++) {
            waiting.remove();
        }
        if (!events.isEmpty()) {
            lastWritten = Optional.of(events.get(events.size() - 1));
        }
        written.set(written.get().with(events.size()));
        answer(batch);
        return batch.size();
    }

    /** The first reply after an event that was set aside reports it. */
    private void answer(List<Entry> batch) {
        for (Request.Reply reply : replies(batch)) {
            if (asideUntold) {
                asideUntold = false;
                reply.failed("Done, but a note of it cannot be saved: a fault of the program.");
            } else {
                reply.done();
            }
        }
    }

    private void setAside(IllegalArgumentException cause, FaultListener faults) {
        if (waiting.remove() instanceof Entry.Event entry) {
            Written before = written.get();
            written.set(new Written(before.events(), before.aside().plus(entry.event()), "", "", StreamTime.ZERO));
            asideUntold = true;
            faults.failed(new StageFault(ONE_NOTE, StageFault.Consequence.GIVEN_UP, cause));
        }
    }

    private void answerUnsaved(String why) {
        List<Entry> all = new ArrayList<>(waiting);
        waiting.removeIf(entry -> entry instanceof Entry.Waiter);
        replies(all).forEach(reply -> reply.failed("Done, but not saved: " + why + "."));
    }

    private static List<SessionEvent> events(Collection<Entry> entries) {
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
