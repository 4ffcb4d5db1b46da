package org.bookholder.journal.sqlite;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.bookholder.journal.event.Journal;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;

/** What can be read of a journal that SQLite refuses. Takes no events. */
final class SalvagedJournal implements Journal {
    private final List<SessionEvent> events;
    private final ProblemException damage;

    private SalvagedJournal(List<SessionEvent> events, ProblemException damage) {
        this.events = events;
        this.damage = damage;
    }

    /**
     * Stands in for a journal.
     *
     * @throws ProblemException {@code refused}, if it has another cause than damage or no event can be found in the file
     */
    static Journal inPlaceOf(Path file, ProblemException refused) throws ProblemException {
        Salvage salvage = damaged(refused) ? Salvage.of(file) : new Salvage(List.of(), 0, 0);
        if (salvage.events().isEmpty()) {
            throw refused;
        }
        return new SalvagedJournal(
                salvage.events(),
                new ProblemException(
                        "is damaged, and not all of its entries can be read",
                        file.toString(),
                        SqlProblems.remedy(file),
                        refused));
    }

    /** Whether what is wrong with a journal may lie in the file itself, and not in its surroundings or its version. */
    static boolean damaged(ProblemException refused) {
        return refused.getCause() instanceof SQLException cause
                ? SqlProblems.damaged(cause)
                : Set.of(Schema.NO_JOURNAL, Schema.DAMAGED).contains(refused.what());
    }

    @Override
    public void append(List<SessionEvent> batch) throws ProblemException {
        throw damage;
    }

    @Override
    public List<SessionEvent> events() {
        return events;
    }

    @Override
    public Optional<ProblemException> damage() {
        return Optional.of(damage);
    }

    @Override
    public void close() {
        // The file was read as a whole.
    }
}
