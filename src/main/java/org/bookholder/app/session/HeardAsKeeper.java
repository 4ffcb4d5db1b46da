package org.bookholder.app.session;

import java.nio.file.Path;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.bookholder.app.environment.Environment;
import org.bookholder.journal.ReadRightNotes;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.AcceptedReading;

/**
 * Keeps with a session's presenter which words are heard as something else, as people decide it in the session. Nothing is kept of a session
 * of which it isn't known whose it is, as when it came from another machine. For one thread at a time.
 */
public final class HeardAsKeeper {
    private final Environment here;
    private final Path session;
    private Optional<ReadRightNotes> kept;

    /** Goes on where the session was left. */
    public HeardAsKeeper(Environment here, Path session) {
        this.here = here;
        this.session = session;
        this.kept = ReadRightNotes.of(session);
    }

    /**
     * Notes whose a new session is.
     *
     * @throws ProblemException if that can't be written; then nothing is kept of the session
     */
    public static void begin(Path session, String presenter) throws ProblemException {
        new ReadRightNotes(presenter, List.of()).keep(session);
    }

    /**
     * Keeps what is new, and forgets what was taken back.
     *
     * @param decided what has been decided in the session by now
     * @throws ProblemException if that can't be kept; a later call tries again
     */
    public void keep(Set<AcceptedReading> decided) throws ProblemException {
        if (kept.isEmpty() || decided.equals(Set.copyOf(kept.get().readRight()))) {
            return;
        }
        String presenter = kept.get().presenter();
        List<AcceptedReading> before = kept.get().readRight();
        new HeardAs(here, presenter).change(without(decided, before), without(before, decided));
        ReadRightNotes now = new ReadRightNotes(presenter, List.copyOf(decided));
        now.keep(session);
        kept = Optional.of(now);
    }

    private static Set<AcceptedReading> without(Collection<AcceptedReading> some, Collection<AcceptedReading> others) {
        Set<AcceptedReading> rest = new HashSet<>(some);
        rest.removeAll(others);
        return rest;
    }
}
