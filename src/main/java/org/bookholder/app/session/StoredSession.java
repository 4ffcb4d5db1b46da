package org.bookholder.app.session;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.bookholder.app.environment.Environment;
import org.bookholder.cutlist.TakeSound;
import org.bookholder.journal.Replay;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.TakeAudio;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;

/**
 * A session read from disk, also while it is running.
 *
 * @param folder where it lies
 * @param events what happened, in order
 * @param state where that led
 */
public record StoredSession(SessionFolder folder, List<SessionEvent> events, SessionState state)
        implements AutoCloseable {
    public static StoredSession open(Environment here, Path place) throws ProblemException {
        return open(here, place, script -> true)
                .orElseThrow(() -> new ProblemException(
                        "nothing was read in this session yet", place.toString(), "name another session"));
    }

    /**
     * A session that was read from a wanted script; empty if it was not, or nothing was read in it yet. What came of an
     * unwanted one is not worked out.
     */
    public static Optional<StoredSession> open(Environment here, Path place, Predicate<Script> wanted)
            throws ProblemException {
        SessionFolder folder = SessionFolder.openForReading(place);
        try {
            List<SessionEvent> events = folder.journal().events();
            Optional<SessionEvent.Opened> opened = Replay.firstOpened(events);
            if (opened.isPresent()) {
                Script script =
                        ScriptFile.parse(opened.get().scriptText(), opened.get().source());
                if (wanted.test(script)) {
                    SessionState state = Session.apply(Session.begin(script, BreakLimits.of(here)), events);
                    return Optional.of(new StoredSession(folder, events, state));
                }
            }
            folder.close();
            return Optional.empty();
        } catch (ProblemException e) {
            folder.close();
            throw e;
        }
    }

    /** The recordings of its takes. */
    public TakeSound sound() {
        return (take, from, to) -> {
            Optional<TakeAudio> audio =
                    folder.audio(take, state.takes().all().get(take - 1).start());
            if (audio.isEmpty()) {
                return Optional.empty();
            }
            try (TakeAudio open = audio.get()) {
                return open.read(from, to);
            }
        };
    }

    /** Whether any take was recorded. */
    public boolean recorded() {
        return state.takes().all().stream()
                .anyMatch(take -> folder.takeFile(take.number()).toFile().isFile());
    }

    @Override
    public void close() {
        folder.close();
    }
}
