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
import org.bookholder.journal.sqlite.SqliteJournal;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.testing.SessionEvents;

final class ReplayProperties {
    /** A state that is all that happened: if this comes back, so does every state that is derived from events. */
    @Property(tries = 20)
    void leadsWhereTheEventsLedThatWereWritten(@ForAll("events") List<SessionEvent> events)
            throws ProblemException, IOException {
        Path folder = Files.createTempDirectory("replay");
        Path file = folder.resolve("journal.db");
        try {
            try (SqliteJournal journal = SqliteJournal.open(file)) {
                for (SessionEvent event : events) {
                    journal.append(event);
                }
            }
            try (SqliteJournal journal = SqliteJournal.open(file)) {
                assertThat(history(journal.events())).isEqualTo(history(events));
            }
        } finally {
            Files.deleteIfExists(file);
            Files.deleteIfExists(folder);
        }
    }

    @Provide
    Arbitrary<List<SessionEvent>> events() {
        return SessionEvents.lists();
    }

    private static String history(List<SessionEvent> events) {
        return Replay.state("", events, (state, event) -> state + event + "\n");
    }
}
