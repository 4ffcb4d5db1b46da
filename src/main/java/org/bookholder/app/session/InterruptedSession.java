package org.bookholder.app.session;

import java.nio.file.Path;
import org.bookholder.journal.Replay;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.journal.SessionSummary.Standing;
import org.bookholder.problem.ProblemException;

/** Tells a session that the same command goes on with when it is given again: the program was killed, or the power went. */
public final class InterruptedSession {
    private InterruptedSession() {}

    /** Whether a session was broken off and is of this very text. */
    public static boolean of(Path session, String text, SessionLocks locks) {
        if (SessionFolder.summary(session, locks).standing() != Standing.BROKEN_OFF) {
            return false;
        }
        try (SessionFolder folder = SessionFolder.openForReading(session)) {
            return Replay.lastText(folder.journal().events())
                    .filter(text::equals)
                    .isPresent();
        } catch (ProblemException e) {
            return false;
        }
    }
}
