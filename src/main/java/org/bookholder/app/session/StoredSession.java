package org.bookholder.app.session;

import java.nio.file.Path;
import java.util.ArrayList;
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
import org.bookholder.session.Take;

/**
 * A session read from disk, possibly while it is running.
 *
 * @param folder its folder
 * @param events its events, in order
 * @param state the resulting state
 */
public record StoredSession(SessionFolder folder, List<SessionEvent> events, SessionState state)
        implements AutoCloseable {
    public static StoredSession open(Environment here, Path place) throws ProblemException {
        return open(here, place, script -> true).orElseThrow(() -> nothingRead(place));
    }

    static ProblemException nothingRead(Path place) {
        return new ProblemException("nothing was read in this session yet", place.toString(), "name another session");
    }

    /**
     * Opens a session if its script is a wanted one; empty if it is not, or if nothing was read yet. The state of an
     * unwanted session is not computed.
     */
    public static Optional<StoredSession> open(Environment here, Path place, Predicate<Script> wanted)
            throws ProblemException {
        SessionFolder folder = SessionFolder.openForReading(place);
        try {
            List<SessionEvent> events = folder.events();
            folder.damage().ifPresent(here.warnings()::of);
            Optional<SessionEvent.Opened> opened = Replay.firstOpened(events);
            if (opened.isPresent()) {
                Script script = opened.get().script();
                if (wanted.test(script)) {
                    return Optional.of(new StoredSession(folder, events, state(here, script, events)));
                }
            }
            folder.close();
            return Optional.empty();
        } catch (ProblemException e) {
            folder.close();
            throw e;
        }
    }

    static SessionState state(Environment here, Script script, List<SessionEvent> events) throws ProblemException {
        return Session.apply(Session.begin(script, BreakLimits.of(here)), events);
    }

    /** The recordings of its takes. */
    public TakeSound sound() {
        return (take, from, to) -> {
            Optional<TakeAudio> audio = audio(take);
            if (audio.isEmpty()) {
                return Optional.empty();
            }
            try (TakeAudio open = audio.get()) {
                return open.read(from, to);
            }
        };
    }

    /** Whether any take has a recording that can be read. */
    public boolean recorded() {
        return silent().size() < state.takes().all().size();
    }

    /** The takes without a readable recording, in order. A kill can leave such takes; the others are not affected. */
    public List<Integer> silent() {
        List<Integer> silent = new ArrayList<>();
        for (Take take : state.takes().all()) {
            Optional<TakeAudio> audio = audio(take.number());
            if (audio.isEmpty()) {
                silent.add(take.number());
            }
            audio.ifPresent(TakeAudio::close);
        }
        return silent;
    }

    private Optional<TakeAudio> audio(int take) {
        try {
            Optional<Take> known = state.takes().number(take);
            return known.isPresent() ? folder.audio(take, known.get().start()) : Optional.empty();
        } catch (ProblemException unreadable) {
            return Optional.empty();
        }
    }

    @Override
    public void close() {
        folder.close();
    }
}
