package org.bookholder.app.session;

import java.util.List;
import java.util.Optional;
import org.bookholder.journal.event.Journal;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;

/**
 * The events in a session's journal, on many systems also after its file was deleted. They are read once for each event that was
 * written last, because a journal that refuses to be written is asked again every second. Used by one thread at a time.
 */
final class SavedEvents {
    private final Journal journal;
    private Optional<Read> read = Optional.empty();

    /**
     * What was read.
     *
     * @param last the event that was written last at that time, if it was known
     * @param events all events at that time
     */
    private record Read(Optional<SessionEvent> last, List<SessionEvent> events) {}

    SavedEvents(Journal journal) {
        this.journal = journal;
    }

    /**
     * The events in order; none if they can't be read.
     *
     * @param last the event that was written last, if it is known
     */
    List<SessionEvent> upTo(Optional<SessionEvent> last) {
        Optional<List<SessionEvent>> known =
                read.filter(r -> r.last().equals(last)).map(Read::events);
        if (known.isPresent()) {
            return known.get();
        }
        try {
            List<SessionEvent> events = List.copyOf(journal.events());
            read = Optional.of(new Read(last, events));
            return events;
        } catch (ProblemException unreadable) {
            return List.of();
        }
    }

    /** To be called when events were written by others, or the memory is no longer needed. */
    void forget() {
        read = Optional.empty();
    }
}
