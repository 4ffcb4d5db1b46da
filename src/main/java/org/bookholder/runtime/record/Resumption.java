package org.bookholder.runtime.record;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.journal.Replay;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.TakeAudio;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
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
     * recording.
     *
     * @param script the script to continue with
     * @param scriptText its text
     * @throws ProblemException if the session was of another script, or cannot be read
     */
    public static ReplayedSession of(SessionFolder folder, Script script, String scriptText, FatigueLimits limits)
            throws ProblemException {
        List<SessionEvent> events = folder.journal().events();
        Optional<String> text = Replay.lastText(events);
        if (text.isPresent() && !text.get().equals(scriptText)) {
            throw new ProblemException(
                    "the session was begun with another text than " + script.source() + " holds now",
                    folder.path().toString(),
                    "begin a new session, or read the text that lies in the session's folder");
        }
        Script first = firstScript(events, script, scriptText);
        ReplayedSession past = ReplayedSession.of(first, limits, events);
        SessionState state = past.state();
        if (!state.takes().rolling()) {
            return past;
        }
        SessionEvent ended = ended(folder, state.takes().last(), state.now());
        folder.journal().append(ended);
        return past.after(ended);
    }

    /** Where the next take begins: at the line to read next, or at the start if everything was read. */
    public static ReadingPosition next(SessionState state) {
        int line = state.following().position().line();
        return line > state.lines().count() ? ReadingPosition.START : new ReadingPosition(line, 1);
    }

    /** The script with which the session began: {@code script}, unless its text has changed since. */
    private static Script firstScript(List<SessionEvent> events, Script script, String scriptText)
            throws ProblemException {
        Optional<SessionEvent.Opened> opened = Replay.firstOpened(events);
        if (opened.isEmpty() || opened.get().scriptText().equals(scriptText)) {
            return script;
        }
        return ScriptReader.parse(opened.get().scriptText(), script.source(), Format.of(script.source()));
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
