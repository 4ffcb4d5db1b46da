package org.bookholder.app.review;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.desk.ServedSession;
import org.bookholder.problem.ProblemException;

/**
 * The sessions of a course that are under review; one that nobody looks at is closed. Safe for use by several threads.
 */
public final class ReviewSessions implements AutoCloseable {
    private static final int MOST = 6;
    private static final long IDLE_NANOS = 30_000_000_000L;

    private final Environment here;
    private final Map<Path, Used> open = new LinkedHashMap<>();

    private record Used(ReviewSession review, long at) {}

    public ReviewSessions(Environment here) {
        this.here = here;
    }

    /** The folders of the open sessions. */
    public synchronized List<Path> folders() {
        return List.copyOf(open.keySet());
    }

    /** The session in a folder; opened if necessary. */
    public synchronized ServedSession of(Path folder) throws ProblemException {
        long now = here.nanoTime().getAsLong();
        letGo(now);
        Used used = open.get(folder);
        if (used == null && open.size() >= MOST) {
            makeRoom();
        }
        ReviewSession review = used == null ? ReviewSession.of(here, folder) : used.review();
        open.put(folder, new Used(review, now));
        return review.place();
    }

    /** Closes sessions that nobody looks at. */
    public synchronized void letGo() {
        letGo(here.nanoTime().getAsLong());
    }

    /** Lets go of one, whoever looks at it. */
    public synchronized void letGo(Path folder) {
        close(folder);
    }

    @Override
    public synchronized void close() {
        open.values().forEach(used -> used.review().close());
        open.clear();
    }

    private void letGo(long now) {
        for (Map.Entry<Path, Used> entry : unwatched()) {
            if (now - entry.getValue().at() > IDLE_NANOS) {
                close(entry.getKey());
            }
        }
    }

    private void makeRoom() throws ProblemException {
        Optional<Path> oldest = unwatched().stream()
                .min(Comparator.comparingLong(entry -> entry.getValue().at()))
                .map(Map.Entry::getKey);
        if (oldest.isEmpty()) {
            throw new ProblemException(MOST + " sessions are open", "the desk", "close one of their pages");
        }
        close(oldest.get());
    }

    private List<Map.Entry<Path, Used>> unwatched() {
        List<Map.Entry<Path, Used>> unwatched = new ArrayList<>();
        for (Map.Entry<Path, Used> entry : open.entrySet()) {
            if (entry.getValue().review().place().feed().listening() == 0) {
                unwatched.add(Map.entry(entry.getKey(), entry.getValue()));
            }
        }
        return unwatched;
    }

    private void close(Path folder) {
        Used used = open.remove(folder);
        if (used != null) {
            used.review().close();
        }
    }
}
