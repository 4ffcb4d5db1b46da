package org.bookholder.app.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.journal.event.Journal;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

/** How often a journal is read whose folder is gone. */
final class SavedEventsTest {
    private static final SessionEvent FIRST = new SessionEvent.PickupMarked(StreamTime.ofSeconds(3), 1, "a van");
    private static final SessionEvent SECOND = new SessionEvent.PickupMarked(StreamTime.ofSeconds(4), 2, "a bus");

    private final CountingJournal journal = new CountingJournal();
    private final SavedEvents saved = new SavedEvents(journal);

    @Test
    void readsOnceWhileNothingIsWritten() {
        journal.append(List.of(FIRST));

        for (int second = 0; second < 60; second++) {
            assertThat(saved.upTo(Optional.of(FIRST))).containsExactly(FIRST);
        }

        assertThat(journal.readings).isEqualTo(1);
    }

    @Test
    void readsAgainAfterAnotherEventWasWritten() {
        journal.append(List.of(FIRST));
        saved.upTo(Optional.of(FIRST));
        journal.append(List.of(SECOND));

        assertThat(saved.upTo(Optional.of(SECOND))).containsExactly(FIRST, SECOND);
    }

    @Test
    void readsAgainAfterOthersWrote() {
        saved.upTo(Optional.empty());
        journal.append(List.of(FIRST));
        saved.forget();

        assertThat(saved.upTo(Optional.empty())).containsExactly(FIRST);
    }

    @Test
    void triesAgainWhatCouldNotBeRead() {
        journal.append(List.of(FIRST));
        journal.readable = false;
        assertThat(saved.upTo(Optional.of(FIRST))).isEmpty();
        journal.readable = true;

        assertThat(saved.upTo(Optional.of(FIRST))).containsExactly(FIRST);
    }

    private static final class CountingJournal implements Journal {
        private final List<SessionEvent> events = new ArrayList<>();
        private int readings;
        private boolean readable = true;

        @Override
        public void append(List<SessionEvent> more) {
            events.addAll(more);
        }

        @Override
        public List<SessionEvent> events() throws ProblemException {
            readings++;
            if (!readable) {
                throw new ProblemException("the disk is gone", "journal.db", "connect it again");
            }
            return List.copyOf(events);
        }

        @Override
        public void close() {
            events.clear();
        }
    }
}
