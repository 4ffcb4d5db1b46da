package org.bookholder.journal;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.journal.sqlite.SqliteJournal;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.testing.Histories;
import org.bookholder.testing.SessionEvents;

final class ReplayProperties {
    /** A state that is all that happened: if this comes back, so does every state that is derived from events. */
    @Property(tries = 20)
    void replayGivesTheStateOfTheWrittenEvents(@ForAll("events") List<SessionEvent> events)
            throws ProblemException, IOException {
        assertThat(history(written(events))).isEqualTo(history(events));
    }

    /** replay(journal(events)) = fold(events). */
    @Property(tries = 40)
    void replayGivesTheStateOfTheSession(@ForAll @Size(max = 80) List<@IntRange(min = 0, max = 5000) Integer> numbers)
            throws ProblemException, IOException {
        List<SessionEvent> events = Histories.of(numbers);
        SessionState begin = Session.begin(Histories.SCRIPT, FatigueLimits.defaults());
        assertThat(Replay.state(begin, written(events), Session::apply)).isEqualTo(Session.apply(begin, events));
    }

    @Provide
    Arbitrary<List<SessionEvent>> events() {
        return SessionEvents.lists();
    }

    /** The events as they come back from the disk after the journal was closed. */
    private static List<SessionEvent> written(List<SessionEvent> events) throws ProblemException, IOException {
        Path folder = Files.createTempDirectory("replay");
        Path file = folder.resolve("journal.db");
        try {
            try (SqliteJournal journal = SqliteJournal.open(file)) {
                for (SessionEvent event : events) {
                    journal.append(event);
                }
            }
            try (SqliteJournal journal = SqliteJournal.open(file)) {
                return journal.events();
            }
        } finally {
            Files.deleteIfExists(file);
            Files.deleteIfExists(folder);
        }
    }

    private static String history(List<SessionEvent> events) {
        return Replay.state("", events, (state, event) -> state + event + "\n");
    }
}
