package org.bookholder.app.session;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.journal.SessionRepair;
import org.bookholder.problem.ProblemException;

/** Repairs stored sessions. What was not settled is listened to again by {@link SessionSettler}, afterwards. */
public final class SessionRepairs {
    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("uuuu-MM-dd-HHmm", Locale.ROOT);

    private SessionRepairs() {}

    /**
     * Repairs a session; the files as they were are kept in its folder, in one named after the time of day.
     *
     * @throws ProblemException if there is no session, it is open elsewhere, or it cannot be repaired; it stays as it is then
     */
    public static SessionRepair.Report repair(Environment here, Path session) throws ProblemException {
        String name = "before-repair-" + DATE.format(here.clock().instant().atZone(here.zone()));
        Path copies = session.resolve(name);
        for (int i = 2; Files.exists(copies); i++) {
            copies = session.resolve(name + "-" + i);
        }
        return SessionRepair.repair(session, copies, here.locks());
    }

    /**
     * What came of a repair.
     *
     * @param report what it did
     * @param takenIn what was brought back from the second place, one sentence each
     */
    public record Outcome(SessionRepair.Report report, List<String> takenIn) {}

    /**
     * Repairs a session, and brings back what was kept for it in the second place while its own folder refused it. A session
     * whose folder is gone is made of what lies there.
     *
     * @param kept the second place; empty for the usual one
     * @throws ProblemException as {@link #repair}
     */
    public static Outcome repairAndTakeIn(Environment here, Path session, Optional<Path> kept) throws ProblemException {
        List<String> takenIn = new ArrayList<>(Files.exists(session) ? List.of() : takeIn(here, session, kept));
        SessionRepair.Report report = repair(here, session);
        if (takenIn.isEmpty()) {
            takenIn.addAll(takeIn(here, session, kept));
        }
        return new Outcome(report, List.copyOf(takenIn));
    }

    private static List<String> takeIn(Environment here, Path session, Optional<Path> kept) throws ProblemException {
        return kept.isEmpty() ? Overflows.takeIn(here, session) : Overflows.takeIn(here, session, kept.get());
    }
}
