package org.bookholder.app.session;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.journal.Replay;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.journal.SessionSummary.Standing;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.record.MendedScript;
import org.bookholder.runtime.record.Resumption;
import org.bookholder.script.source.SpeakerChoice;
import org.bookholder.session.SessionEvent;

/**
 * Recognises a session that was interrupted by a kill or a power cut, which the same command continues when it is run
 * again.
 */
public final class InterruptedSession {
    private InterruptedSession() {}

    /** Whether a session was interrupted and is of this lesson: of its very text, or of its file before it was mended. */
    public static boolean of(Path session, ScriptFile lesson, SessionLocks locks) {
        if (SessionFolder.summary(session, locks).standing() != Standing.BROKEN_OFF) {
            return false;
        }
        try (SessionFolder folder = SessionFolder.openForReading(session)) {
            List<SessionEvent> events = folder.events();
            Optional<String> text = Replay.lastText(events);
            return text.isPresent() && (text.get().equals(lesson.text()) || mended(events, text.get(), lesson));
        } catch (ProblemException e) {
            return false;
        }
    }

    private static boolean mended(List<SessionEvent> events, String text, ScriptFile lesson) throws ProblemException {
        String source = Replay.firstOpened(events).orElseThrow().source();
        return Resumption.sameFile(source, lesson.script().source())
                && SpeakerChoice.of(text)
                        .names()
                        .equals(SpeakerChoice.of(lesson.text()).names())
                && MendedScript.of(ScriptFile.parse(text, source), lesson.script(), false)
                        .alike();
    }
}
