package org.bookholder.app.session;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
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
}
