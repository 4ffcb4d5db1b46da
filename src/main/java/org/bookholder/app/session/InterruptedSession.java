package org.bookholder.app.session;

import java.nio.file.Path;
import org.bookholder.journal.Replay;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.journal.SessionSummary.Standing;
import org.bookholder.problem.ProblemException;

/**
 * Recognises a session that was interrupted by a kill or a power cut, which the same command continues when it is run
 * again.
 */
public final class InterruptedSession {
    private InterruptedSession() {}

    /** Whether a session was interrupted and has exactly this text. */
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
