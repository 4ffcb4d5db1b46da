package org.bookholder.journal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bookholder.files.DiskProblems;
import org.bookholder.journal.sqlite.SqliteJournal;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;

/**
 * Events in an overflow folder, which become more as long as the session's journal refuses them. They lie in one or more small
 * journals, each of which names the set that it belongs to and the number of its first event in it, from 0
 * ({@code events-1-from-0.db}). The folder's description names the set that counts, so a new one replaces the old in one step.
 */
public final class OverflowNotes {
    /** A transaction that does not fit a small file should still fit the next one. */
    private static final int LARGEST_BATCH = 500;

    private static final Pattern FILE = Pattern.compile("events-(\\d{1,9})-from-(\\d{1,9})\\.db");

    private final OverflowFolder folder;
    private final String set;
    private final Optional<SessionEvent> after;
    private final List<SessionEvent> kept = new ArrayList<>();
    private Optional<Path> open = Optional.empty();

    private record Part(String set, int first, Path file) {}

    private OverflowNotes(OverflowFolder folder, String set, Optional<SessionEvent> after) {
        this.folder = folder;
        this.set = set;
        this.after = after;
    }

    /**
     * Keeps events in place of those that the folder held.
     *
     * @param after the last event that is in the session's journal; empty if none is, or it is not known
     * @param events those that follow it
     * @throws ProblemException if they could not be written; then the folder holds what it held before
     */
    public static OverflowNotes begin(OverflowFolder folder, Optional<SessionEvent> after, List<SessionEvent> events)
            throws ProblemException {
        List<Part> old = parts(folder.path());
        int last = old.stream()
                .mapToInt(part -> Integer.parseInt(part.set()))
                .max()
                .orElse(0);
        OverflowNotes begun = new OverflowNotes(folder, String.valueOf(last + 1), after);
        try {
            begun.add(events);
            folder.describe(begun.set, after);
        } catch (ProblemException e) {
            delete(parts(folder.path()).stream()
                    .filter(part -> part.set().equals(begun.set))
                    .toList());
            throw e;
        }
        delete(old);
        return begun;
    }

    /** Where they are. */
    public OverflowFolder folder() {
        return folder;
    }

    /** Whether these events, behind {@code last}, are those that are kept here and perhaps some more. */
    public boolean growsTo(Optional<SessionEvent> last, List<SessionEvent> events) {
        return after.equals(last)
                && kept.size() <= events.size()
                && kept.get(kept.size() - 1).equals(events.get(kept.size() - 1));
    }

    /**
     * Keeps those of these events that are not kept yet.
     *
     * @param events all that are to be kept, beginning with those that are
     * @throws ProblemException if not all could be written; what could is kept
     */
    public void growTo(List<SessionEvent> events) throws ProblemException {
        add(events.subList(kept.size(), events.size()));
    }

    /** Keeps none any more: the session's journal has them. */
    public void drop() throws ProblemException {
        folder.describe("", Optional.empty());
        delete(parts(folder.path()));
    }

    private void add(List<SessionEvent> events) throws ProblemException {
        for (int i = 0; i < events.size(); i += LARGEST_BATCH) {
            List<SessionEvent> batch = events.subList(i, Math.min(events.size(), i + LARGEST_BATCH));
            if (open.isEmpty() || !fits(open.get(), batch)) {
                Path next = folder.path().resolve("events-" + set + "-from-" + kept.size() + ".db");
                // What an attempt that failed may have left there is among these events.
                delete(List.of(new Part(set, kept.size(), next)));
                append(next, batch);
                open = Optional.of(next);
            }
            kept.addAll(batch);
        }
    }

    /** A file may be as long as it can be, and another one still have room. */
    private boolean fits(Path file, List<SessionEvent> batch) {
        try {
            append(file, batch);
            return true;
        } catch (ProblemException full) {
            // It may have them all the same. What it has beyond the next file's first event does not count.
            open = Optional.empty();
            return false;
        }
    }

    private static void append(Path file, List<SessionEvent> events) throws ProblemException {
        try (SqliteJournal journal = SqliteJournal.open(file)) {
            journal.append(events);
        }
    }

    /** The events of a set, in order. */
    static List<SessionEvent> read(Path folder, String set) throws ProblemException {
        List<SessionEvent> events = new ArrayList<>();
        for (Part part : parts(folder)) {
            if (part.set().equals(set) && part.first() <= events.size()) {
                events.subList(part.first(), events.size()).clear();
                // Opened for writing: SQLite reads the log of one that a kill left only so.
                try (SqliteJournal journal = SqliteJournal.open(part.file())) {
                    events.addAll(journal.events());
                }
            }
        }
        return events;
    }

    private static List<Part> parts(Path folder) throws ProblemException {
        List<Part> parts = new ArrayList<>();
        for (Path file : SessionFiles.in(folder)) {
            Matcher name = FILE.matcher(String.valueOf(file.getFileName()));
            if (name.matches()) {
                parts.add(new Part(name.group(1), Integer.parseInt(name.group(2)), file));
            }
        }
        parts.sort(Comparator.comparingInt(Part::first));
        return parts;
    }

    private static void delete(List<Part> parts) throws ProblemException {
        for (Part part : parts) {
            for (String end : List.of("", "-wal", "-shm")) {
                Path file = part.file().resolveSibling(part.file().getFileName() + end);
                try {
                    Files.deleteIfExists(file);
                } catch (IOException e) {
                    throw DiskProblems.writing(file, e);
                }
            }
        }
    }
}
