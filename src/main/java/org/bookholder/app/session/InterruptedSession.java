package org.bookholder.app.session;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.journal.Replay;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.journal.SessionSummary.Standing;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.record.MendedScript;
import org.bookholder.runtime.record.Resumption;
import org.bookholder.script.source.SpeakerChoice;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.TakeEnd;

/**
 * Recognises a session that was interrupted by a kill or a power cut, which the same command continues when it is run
 * again.
 */
public final class InterruptedSession {
    private InterruptedSession() {}

    /**
     * Whether a session was interrupted and is of this lesson. It stays interrupted when what was recorded was listened to since, until a
     * take is read in it.
     */
    public static boolean of(Path session, ScriptFile lesson, SessionLocks locks) {
        Standing standing = SessionFolder.summary(session, locks).standing();
        return switch (standing) {
            case BROKEN_OFF -> is(session, events -> isOfText(events, lesson));
            case FINISHED -> is(session, events -> lastTakeBrokenOff(events) && isOfText(events, lesson));
            case EMPTY, OPEN, UNREADABLE -> false;
        };
    }

    /**
     * The newest interrupted session of today that is of this lesson, beside one that was begun.
     *
     * @throws ProblemException if the sessions cannot be listed
     */
    public static Optional<Path> beside(Path begun, ScriptFile lesson, Environment here) throws ProblemException {
        return SessionFolders.recent(here.sessions(), here).stream()
                .filter(session -> !session.equals(begun) && of(session, lesson, here.locks()))
                .findFirst();
    }

    /** Whether a session is of this lesson: of its very text, or of its file before it was mended. */
    public static boolean isOfText(Path session, ScriptFile lesson) {
        return is(session, events -> isOfText(events, lesson));
    }

    /** What is asked of a session's events. */
    @FunctionalInterface
    private interface Question {
        boolean ask(List<SessionEvent> events) throws ProblemException;
    }

    private static boolean is(Path session, Question question) {
        try (SessionFolder folder = SessionFolder.openForReading(session)) {
            return question.ask(folder.events());
        } catch (ProblemException e) {
            return false;
        }
    }

    private static boolean lastTakeBrokenOff(List<SessionEvent> events) {
        boolean broken = false;
        for (SessionEvent event : events) {
            if (event instanceof SessionEvent.TakeEnded take) {
                broken = take.reason() == TakeEnd.BROKEN_OFF;
            }
        }
        return broken;
    }

    private static boolean isOfText(List<SessionEvent> events, ScriptFile lesson) throws ProblemException {
        Optional<String> text = Replay.lastText(events);
        return text.isPresent() && (text.get().equals(lesson.text()) || mended(events, text.get(), lesson));
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
