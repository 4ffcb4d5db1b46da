package org.bookholder.app.session;

import java.io.File;
import java.nio.file.Path;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.journal.Replay;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.script.source.RecordedLines;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;

/**
 * Caches the sessions in some folders; each is read again only when its journal has changed, several at a time. Used by one thread at a
 * time.
 */
public final class SessionCache {
    private final Environment here;
    private final List<Path> places;
    private final Map<Path, Kept> known = new HashMap<>();

    /** Sessions of one lesson mostly have the same script. */
    private final Map<ScriptText, Script> scripts = Collections.synchronizedMap(new HashMap<>());

    /**
     * A cached session.
     *
     * @param folder its folder
     * @param stamp changes when its journal changes
     * @param state its state; empty if nothing was recorded or it cannot be read
     * @param trouble why it cannot be read, one line for people; empty if it can
     * @param unsettled the takes that were broken off before they were settled, in order
     * @param damaged whether its journal is damaged and can be repaired
     */
    public record Kept(
            Path folder,
            String stamp,
            Optional<SessionState> state,
            String trouble,
            List<Integer> unsettled,
            boolean damaged) {
        /** Copies the list. */
        public Kept {
            unsettled = List.copyOf(unsettled);
        }
    }

    private record ScriptText(String text, String source, RecordedLines lines) {}

    /** Told of the progress while sessions are read, which takes seconds if there are hundreds. */
    @FunctionalInterface
    public interface Progress {
        /** Tells nobody. */
        Progress NONE = (sessions, all) -> {};

        /** So many of the sessions are known. */
        void known(int sessions, int all);
    }

    /** Creates a cache for the sessions in {@code places}; a missing folder holds no sessions. */
    public SessionCache(Environment here, Collection<Path> places) {
        this.here = here;
        this.places = List.copyOf(places);
    }

    /** The folders of all sessions, sorted within each place. */
    public List<Path> folders() throws ProblemException {
        return SessionFolders.folders(places);
    }

    /** The current state of all sessions. */
    public List<Kept> all() throws ProblemException {
        return all(Progress.NONE);
    }

    /** The same; {@code progress} is told while sessions are still to be read. */
    public List<Kept> all(Progress progress) throws ProblemException {
        List<Path> folders = folders();
        known.keySet().retainAll(folders);
        Map<Path, String> changed = new LinkedHashMap<>();
        for (Path folder : folders) {
            String stamp = stamp(folder);
            Kept kept = known.get(folder);
            if (kept == null || !kept.stamp().equals(stamp)) {
                changed.put(folder, stamp);
            }
        }
        Counter counter = new Counter(progress, folders.size() - changed.size(), folders.size());
        counter.tell();
        here.sideBySide()
                .each(List.copyOf(changed.entrySet()), one -> {
                    Kept kept = read(one.getKey(), one.getValue());
                    counter.done();
                    return kept;
                })
                .forEach(kept -> known.put(kept.folder(), kept));
        scripts.clear();
        return folders.stream().map(known::get).toList();
    }

    /** Counts the sessions that are known while several are read at a time. */
    private static final class Counter {
        private final Progress progress;
        private final int all;
        private int known;

        Counter(Progress progress, int known, int all) {
            this.progress = progress;
            this.known = known;
            this.all = all;
        }

        /** Tells how many are known as long as there are more. */
        synchronized void tell() {
            if (known < all) {
                progress.known(known, all);
            }
        }

        synchronized void done() {
            known++;
            tell();
        }
    }

    private Kept read(Path folder, String stamp) {
        List<Integer> unsettled = List.of();
        boolean damaged = false;
        try (SessionFolder session = SessionFolder.openForReading(folder)) {
            List<SessionEvent> events = session.events();
            unsettled = SessionSettler.unsettled(events);
            damaged = session.damage().isPresent();
            session.damage().ifPresent(here.warnings()::of);
            SessionEvent.Opened opened =
                    Replay.firstOpened(events).orElseThrow(() -> StoredSession.nothingRead(folder));
            SessionState state = StoredSession.state(here, script(opened), events);
            Optional<SessionState> recorded =
                    Optional.of(state).filter(s -> !s.takes().all().isEmpty());
            return new Kept(folder, stamp, recorded, "", unsettled, damaged);
        } catch (ProblemException e) {
            return new Kept(folder, stamp, Optional.empty(), e.getMessage(), unsettled, damaged);
        }
    }

    private Script script(SessionEvent.Opened opened) throws ProblemException {
        ScriptText text = new ScriptText(opened.scriptText(), opened.source(), opened.lines());
        Script known = scripts.get(text);
        if (known == null) {
            known = opened.script();
            scripts.put(text, known);
        }
        return known;
    }

    /** A stamp of a session's folder, from the journal's files, which change with every event. */
    public static String stamp(Path folder) {
        return stamp(folder.resolve("journal.db").toFile())
                + stamp(folder.resolve("journal.db-wal").toFile());
    }

    /** A stamp that changes when the file changes; empty if it does not exist. */
    public static String stamp(File file) {
        return file.length() + "-" + file.lastModified() + ";";
    }
}
