package org.bookholder.runtime.record;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.journal.Replay;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.TakeAudio;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.script.source.RecordedLines;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.bookholder.session.PickupRound;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.session.Take;
import org.bookholder.session.TakeEnd;
import org.bookholder.timing.StreamTime;

/** Continues a session where it was left, even after a kill in the middle of a take. */
public final class Resumption {
    private Resumption() {}

    /**
     * Replays the session in {@code folder}. An interrupted take is first ended in the journal, at the end of its
     * recording. If the script was changed since, or this version of the program divides it into other lines, that is
     * entered next, as while a session runs: lines with the same words keep their notes.
     *
     * @param script the script to continue with
     * @param scriptText its text
     * @param changed told how the text was changed, if it was
     * @throws ProblemException if the session was of another script, or cannot be read; nothing is changed then
     */
    public static ReplayedSession of(
            SessionFolder folder,
            Script script,
            String scriptText,
            FatigueLimits limits,
            Consumer<MendedScript> changed)
            throws ProblemException {
        List<SessionEvent> events = folder.events();
        ReplayedSession past = ReplayedSession.of(firstScript(events, script, scriptText), limits, events);
        Optional<MendedScript> mended = Optional.empty();
        boolean sameText = Replay.lastText(events).orElse(scriptText).equals(scriptText);
        if (!sameText || !RecordedLines.of(past.state().script()).equals(RecordedLines.of(script))) {
            mended = Optional.of(MendedScript.of(past.state().script(), script, sameText));
            if (!sameText) {
                checkSameLesson(folder, events, script, mended.get());
            }
        }
        if (past.state().takes().rolling()) {
            past = enter(
                    folder,
                    past,
                    ended(folder, past.state().takes().last(), past.state().now()));
        }
        if (mended.isPresent()) {
            past = enter(folder, past, SessionEvent.TextChanged.to(past.state().now(), script, scriptText));
            changed.accept(mended.get());
        }
        return past;
    }

    /**
     * Ends a pickup round that was broken off, for someone who begins elsewhere. Does nothing if there is none.
     *
     * @param past what {@link #of} gave for this folder
     * @throws ProblemException if the journal cannot be written
     */
    public static ReplayedSession withoutRound(SessionFolder folder, ReplayedSession past) throws ProblemException {
        SessionState state = past.state();
        return state.round().isOn()
                ? enter(folder, past, new SessionEvent.RoundMoved(state.now(), PickupRound.NONE))
                : past;
    }

    /** Whether two scripts come from the same file; in another place the same name may be another file. */
    public static boolean sameFile(String source, String other) {
        return absolute(source).equals(absolute(other));
    }

    private static Path absolute(String source) {
        return Path.of(source).toAbsolutePath().normalize();
    }

    private static ReplayedSession enter(SessionFolder folder, ReplayedSession past, SessionEvent event)
            throws ProblemException {
        folder.journal().append(event);
        return past.after(event);
    }

    private static void checkSameLesson(
            SessionFolder folder, List<SessionEvent> events, Script script, MendedScript mended)
            throws ProblemException {
        String source = Replay.firstOpened(events).orElseThrow().source();
        boolean sameMarkup = Format.of(source) == Format.of(script.source());
        boolean sameFile = events.stream()
                .filter(SessionEvent.Opened.class::isInstance)
                .map(SessionEvent.Opened.class::cast)
                .anyMatch(opened -> sameFile(opened.source(), script.source()));
        if (!sameMarkup || !(sameFile || mended.alike())) {
            throw new ProblemException(
                    "the session was begun with another script than " + script.source() + " (" + mended.kept()
                            + " of its " + mended.before() + " lines are in it)",
                    folder.path().toString(),
                    "begin a new session, or read the text that lies in the session's folder");
        }
    }

    /** Where the next take begins: at the line to read next, or at the start if everything was read. */
    public static ReadingPosition next(SessionState state) {
        int line = state.following().position().line();
        return line > state.lines().count() ? ReadingPosition.START : new ReadingPosition(line, 1);
    }

    /** The script with which the session began, with the lines that were read: {@code script}, unless its text has changed since. */
    private static Script firstScript(List<SessionEvent> events, Script script, String scriptText)
            throws ProblemException {
        Optional<SessionEvent.Opened> opened = Replay.firstOpened(events);
        if (opened.isEmpty()) {
            return script;
        }
        String text = opened.get().scriptText();
        boolean same = text.equals(scriptText);
        Script today = same ? script : ScriptReader.parse(text, script.source(), Format.of(script.source()));
        return opened.get().lines().in(today);
    }

    private static SessionEvent ended(SessionFolder folder, Take take, StreamTime seen) {
        StreamTime end = StreamTime.max(seen, recordedTo(folder, take));
        double seconds = end.since(take.start()).seconds();
        Instant when = take.when().plus(Duration.ofNanos(Math.round(seconds * 1e9)));
        return new SessionEvent.TakeEnded(end, take.number(), when, TakeEnd.BROKEN_OFF);
    }

    /** Where a take's recording ends. An unreadable recording must not prevent the reading. */
    private static StreamTime recordedTo(SessionFolder folder, Take take) {
        try {
            Optional<TakeAudio> audio = folder.audio(take.number(), take.start());
            if (audio.isPresent()) {
                try (TakeAudio open = audio.get()) {
                    return open.end();
                }
            }
            return take.start();
        } catch (ProblemException unreadable) {
            return take.start();
        }
    }
}
