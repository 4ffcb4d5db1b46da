package org.bookholder.app.session;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.bookholder.app.environment.Environment;
import org.bookholder.files.DiskProblems;
import org.bookholder.files.PrivateFiles;
import org.bookholder.journal.OverflowFolder;
import org.bookholder.journal.OverflowMerge;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.record.Overflow;
import org.bookholder.runtime.record.Tape;
import org.bookholder.runtime.record.Tapes;
import org.bookholder.session.SessionEvent;
import org.bookholder.timing.StreamTime;

/**
 * The second place of a session that is open here: a private folder among the user's data or, if there is no room either, in the
 * temporary folder. It is made when something has to be kept there. {@link Overflows} finds it again.
 */
public final class SecondPlace implements Overflow {
    /** A place with less room is passed over: others need it. Bytes. */
    private static final long ROOM = 16L << 20;

    private final Environment here;
    private final SessionFolder session;
    /** By the folder above. */
    private final Map<Path, OverflowFolder> open = new LinkedHashMap<>();

    public SecondPlace(Environment here, SessionFolder session) {
        this.here = here;
        this.session = session;
    }

    private interface Use<T> {
        T of(OverflowFolder folder) throws ProblemException;
    }

    @Override
    public synchronized Tape begin(int take, int rate, StreamTime takeStart, long first) throws ProblemException {
        StreamTime start = takeStart.plus(StreamTime.ofSamples(first, rate));
        return inFirstWithRoom(folder -> Tapes.of(folder.record(take, rate, takeStart, first), start));
    }

    @Override
    public synchronized int keep(List<SessionEvent> rest, Optional<SessionEvent> before) throws ProblemException {
        List<SessionEvent> saved = saved();
        boolean gone = !SessionFolder.isSession(session.path()) && !saved.isEmpty();
        List<SessionEvent> all = new ArrayList<>(gone ? saved : List.of());
        all.addAll(rest);
        Optional<SessionEvent> after = gone ? Optional.empty() : last(saved).or(() -> before);
        if (!all.isEmpty()) {
            inFirstWithRoom(folder -> {
                folder.keep(after, all);
                return folder;
            });
        }
        return all.size();
    }

    /** What the journal holds, if it can be read: on many systems also if its file was deleted. */
    private List<SessionEvent> saved() {
        try {
            return session.journal().events();
        } catch (ProblemException unreadable) {
            return List.of();
        }
    }

    private static Optional<SessionEvent> last(List<SessionEvent> events) {
        return events.isEmpty() ? Optional.empty() : Optional.of(events.get(events.size() - 1));
    }

    @Override
    public synchronized String place() {
        return open.values().stream().map(folder -> folder.path().toString()).collect(Collectors.joining(" and "));
    }

    /**
     * Takes what is kept in the second place into the session, if it is there and has room again.
     *
     * @return whether nothing is left in the second place
     */
    public synchronized boolean takeIn() {
        try {
            if (!open.isEmpty() && !SessionFolder.isSession(session.path())) {
                return false;
            }
            for (OverflowFolder folder : List.copyOf(open.values())) {
                OverflowMerge.into(session, folder);
                folder.delete();
                open.values().remove(folder);
            }
            return true;
        } catch (ProblemException stillFull) {
            return false;
        }
    }

    private <T> T inFirstWithRoom(Use<T> use) throws ProblemException {
        List<String> reasons = new ArrayList<>();
        for (Path parent : Overflows.parents(here)) {
            try {
                return use.of(in(parent));
            } catch (ProblemException e) {
                reasons.add(e.getMessage());
            }
        }
        throw new ProblemException(
                "there is no second place either (" + String.join("; ", reasons) + ")",
                session.path().toString(),
                "free some space");
    }

    private OverflowFolder in(Path parent) throws ProblemException {
        try {
            PrivateFiles.createFolder(parent);
            if (Files.getFileStore(parent).getUsableSpace() < ROOM) {
                throw new ProblemException("the disk is full", parent.toString(), "free some space");
            }
            OverflowFolder known = open.get(parent);
            if (known == null) {
                known = OverflowFolder.begin(Files.createTempDirectory(parent, Overflows.PREFIX), session.path());
                open.put(parent, known);
            }
            return known;
        } catch (IOException e) {
            throw DiskProblems.writing(parent, e);
        }
    }
}
