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
import org.bookholder.files.DiskRoom;
import org.bookholder.files.PrivateFiles;
import org.bookholder.journal.OverflowFolder;
import org.bookholder.journal.OverflowMerge;
import org.bookholder.journal.OverflowNotes;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.record.Overflow;
import org.bookholder.runtime.record.Tape;
import org.bookholder.runtime.record.Tapes;
import org.bookholder.session.SessionEvent;
import org.bookholder.timing.StreamTime;

/**
 * The second place of a session that is open here: a private folder among the user's data or, if nothing can be written there either,
 * in the temporary folder. It is made when something has to be kept there. {@link Overflows} finds it again.
 */
public final class SecondPlace implements Overflow {
    /** A place with less room is passed over: others need it. Bytes. */
    private static final long ROOM = 16L << 20;

    private final Environment here;
    private final SessionFolder session;
    private final SavedEvents journal;
    /** By the folder above. */
    private final Map<Path, OverflowFolder> open = new LinkedHashMap<>();

    private Optional<OverflowNotes> notes = Optional.empty();
    private volatile String place = "";

    public SecondPlace(Environment here, SessionFolder session) {
        this.here = here;
        this.session = session;
        this.journal = new SavedEvents(session.journal());
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
        boolean there = SessionFolder.isSession(session.path());
        List<SessionEvent> saved = there && before.isPresent() ? List.of() : journal.upTo(before);
        boolean gone = !there && !saved.isEmpty();
        List<SessionEvent> all = new ArrayList<>(gone ? saved : List.of());
        all.addAll(rest);
        Optional<SessionEvent> after = gone ? Optional.empty() : before.or(() -> last(saved));
        if (all.isEmpty()) {
            drop();
        } else if (!grown(after, all)) {
            begin(after, all);
        }
        return all.size();
    }

    /** Adds what is new to what is kept; false if that is something else, or there is no room for it where it is. */
    private boolean grown(Optional<SessionEvent> after, List<SessionEvent> all) {
        try {
            if (notes.isPresent() && notes.get().growsTo(after, all)) {
                notes.get().growTo(all);
                return true;
            }
            return false;
        } catch (ProblemException full) {
            return false;
        }
    }

    private void begin(Optional<SessionEvent> after, List<SessionEvent> all) throws ProblemException {
        Optional<OverflowNotes> old = notes;
        notes = Optional.of(inFirstWithRoom(folder -> OverflowNotes.begin(folder, after, all)));
        if (old.isPresent() && !old.get().folder().equals(notes.get().folder())) {
            old.get().drop();
        }
    }

    private void drop() throws ProblemException {
        journal.forget();
        if (notes.isPresent()) {
            notes.get().drop();
            notes = Optional.empty();
        }
    }

    private static Optional<SessionEvent> last(List<SessionEvent> events) {
        return events.isEmpty() ? Optional.empty() : Optional.of(events.get(events.size() - 1));
    }

    @Override
    public String place() {
        return place;
    }

    /**
     * Takes what is kept in the second place into the session, if it is there and has room again.
     *
     * @return whether nothing is left in the second place
     */
    public synchronized boolean takeIn() {
        journal.forget();
        try {
            if (!open.isEmpty() && !SessionFolder.isSession(session.path())) {
                return false;
            }
            for (OverflowFolder folder : List.copyOf(open.values())) {
                OverflowMerge.into(session, folder);
                folder.delete();
                open.values().remove(folder);
                place = places();
            }
            notes = Optional.empty();
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
        OverflowFolder known = open.get(parent);
        if (known != null) {
            DiskRoom.check(known.path(), ROOM);
            return known;
        }
        try {
            Path made = Files.createTempDirectory(PrivateFiles.createFolder(parent), Overflows.PREFIX);
            OverflowFolder begun = new OverflowFolder(made, session.path());
            try {
                DiskRoom.check(made, ROOM);
                begun = OverflowFolder.begin(made, session.path());
            } catch (ProblemException e) {
                begun.delete();
                throw e;
            }
            open.put(parent, begun);
            place = places();
            return begun;
        } catch (IOException e) {
            throw DiskProblems.writing(parent, e);
        }
    }

    private String places() {
        return open.values().stream().map(folder -> folder.path().toString()).collect(Collectors.joining(" and "));
    }
}
