package org.bookholder.app.session;

import java.io.File;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionState;

/**
 * Caches the sessions in some folders; each is read again only when its journal has changed. Used by one thread at a
 * time.
 */
public final class SessionCache {
    private final Environment here;
    private final List<Path> places;
    private final Map<Path, Kept> known = new HashMap<>();

    /**
     * A cached session.
     *
     * @param folder its folder
     * @param stamp changes when its journal changes
     * @param state its state; empty if nothing was recorded or it cannot be read
     * @param trouble why it cannot be read, one line for people; empty if it can
     */
    public record Kept(Path folder, String stamp, Optional<SessionState> state, String trouble) {}

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
        List<Path> folders = folders();
        known.keySet().retainAll(folders);
        List<Kept> all = new ArrayList<>();
        for (Path folder : folders) {
            String stamp = stamp(folder);
            Kept kept = known.get(folder);
            if (kept == null || !kept.stamp().equals(stamp)) {
                kept = read(folder, stamp);
                known.put(folder, kept);
            }
            all.add(kept);
        }
        return all;
    }

    private Kept read(Path folder, String stamp) {
        try (StoredSession session = StoredSession.open(here, folder)) {
            Optional<SessionState> state = Optional.of(session.state());
            return new Kept(folder, stamp, state.filter(s -> !s.takes().all().isEmpty()), "");
        } catch (ProblemException e) {
            return new Kept(folder, stamp, Optional.empty(), e.getMessage());
        }
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
