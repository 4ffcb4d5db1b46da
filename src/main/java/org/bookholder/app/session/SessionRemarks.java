package org.bookholder.app.session;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.app.environment.Environment;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Remark;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;

/** Writes what was decided about a film into the journal of a session that nobody has open. */
public final class SessionRemarks {
    /** Who decides about the film: pages and commands take back what this author did. */
    public static final String FILM = "film";

    private SessionRemarks() {}

    /**
     * Writes remarks of {@link #FILM}.
     *
     * @param state the session's state
     * @throws ProblemException if it is open elsewhere or cannot be written
     */
    public static void write(Path session, SessionState state, List<Remark> remarks, Environment here)
            throws ProblemException {
        if (!Overflows.of(here, session).isEmpty()) {
            throw new ProblemException(
                    "a part of it is still kept elsewhere, so that nothing can be decided in it",
                    session.toString(),
                    "make room on its disk, and open it once");
        }
        try (SessionFolder folder = SessionFolder.open(session, here.locks())) {
            List<SessionEvent> events = new ArrayList<>();
            for (Remark remark : remarks) {
                events.add(new SessionEvent.Remarked(state.now(), new Remark.Signed(FILM, remark)));
            }
            folder.journal().append(events);
        }
    }
}
