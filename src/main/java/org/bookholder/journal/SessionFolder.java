package org.bookholder.journal;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.files.DiskProblems;
import org.bookholder.files.PrivateFiles;
import org.bookholder.journal.event.Journal;
import org.bookholder.journal.sqlite.SqliteJournal;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.speech.wav.WavHeader;
import org.bookholder.timing.StreamTime;

/**
 * A session on disk, one folder: the journal {@code journal.db}, a recording for each take ({@code take-001.wav}, ...),
 * the script as it was read, and {@code lock}. Confined to one thread, except as {@link TakeRecording} allows.
 */
public final class SessionFolder implements AutoCloseable {
    /** A file that SQLite has beside a journal as long as it is open, and after a kill. */
    private static final String UNCLOSED = SessionFiles.JOURNAL + "-wal";

    /** What the copy of a script is called: as Markdown, and as plain text. */
    static final List<String> SCRIPT_COPIES = List.of("script.md", "script.txt");

    private final Path path;
    private final Journal journal;
    private final Optional<FolderLock> lock;
    private boolean leftOpen;

    private SessionFolder(Path path, Journal journal, Optional<FolderLock> lock) {
        this.path = path;
        this.journal = journal;
        this.lock = lock;
    }

    /**
     * Begins a session in a folder that is empty or does not exist yet. Missing parent folders are created.
     *
     * @throws ProblemException if something is there already, or the folder cannot be written
     */
    public static SessionFolder create(Path folder, SessionLocks locks) throws ProblemException {
        if (isSession(folder)) {
            throw new ProblemException(
                    "holds a session already", folder.toString(), "open that one, or name another folder");
        }
        try {
            PrivateFiles.createFolder(folder);
            try (Stream<Path> entries = Files.list(folder)) {
                if (!entries.allMatch(FolderLock::isLockFile)) {
                    throw new ProblemException(
                            "is not empty and holds no session", folder.toString(), "name an empty or a new folder");
                }
            }
        } catch (IOException e) {
            throw DiskProblems.writing(folder, e);
        }
        return locked(folder, locks);
    }

    /**
     * Opens a session to continue it. Headers of recordings that a kill left wrong are corrected first.
     *
     * @throws ProblemException if there is no session, it is open elsewhere, of a newer version, or cannot be written
     */
    public static SessionFolder open(Path folder, SessionLocks locks) throws ProblemException {
        checkSession(folder);
        SessionFolder session = locked(folder, locks);
        try {
            session.repairTakes();
            return session;
        } catch (ProblemException e) {
            session.close();
            throw e;
        }
    }

    /**
     * Opens a session for reading only, even if it is open elsewhere. Changes nothing.
     *
     * @throws ProblemException if there is no session, it is of a newer version, or cannot be read
     */
    public static SessionFolder openForReading(Path folder) throws ProblemException {
        checkSession(folder);
        return new SessionFolder(folder, SqliteJournal.openForReading(journalOf(folder)), Optional.empty());
    }

    /**
     * The sessions in a folder, oldest first, including those that were killed; none if there is no such folder.
     *
     * @throws ProblemException if the folder cannot be read; a session that cannot be read is listed as such
     */
    public static List<SessionSummary> list(Path parent, SessionLocks locks) throws ProblemException {
        return SessionList.of(parent, locks);
    }

    /** A summary of one session, even if it cannot be read. */
    public static SessionSummary summary(Path folder, SessionLocks locks) {
        return SessionList.summary(folder, locks);
    }

    /** Whether the folder holds a session. */
    public static boolean isSession(Path folder) {
        return Files.isRegularFile(journalOf(folder));
    }

    /**
     * Whether another process has the session in a folder open. While this checks, it may look open to others for a moment, so it
     * checks only if the session was not closed. False if it cannot be found out.
     */
    public static boolean isOpenElsewhere(Path folder, SessionLocks locks) {
        try {
            return Files.exists(folder.resolve(UNCLOSED))
                    && !locks.has(folder.toRealPath())
                    && FolderLock.isTaken(folder, locks);
        } catch (IOException gone) {
            return false;
        }
    }

    /** The folder. */
    public Path path() {
        return path;
    }

    /** The session's events; closed with the folder. */
    public Journal journal() {
        return journal;
    }

    /**
     * The session's events, in order. Of a journal that is damaged, those that can be read, and what has to be put back so that
     * they fit together; {@link #damage} then tells of it.
     *
     * @throws ProblemException if nothing of the journal can be read
     */
    public List<SessionEvent> events() throws ProblemException {
        List<SessionEvent> events = journal.events();
        return journal.damage().isEmpty()
                ? events
                : EventMender.mend(path, events).events();
    }

    /** What was found to be damaged when {@link #events} was last called. */
    public Optional<ProblemException> damage() {
        return journal.damage();
    }

    /** The file of a take, counted from 1; it need not exist. */
    public Path takeFile(int take) {
        return takeFile(path, take);
    }

    static Path takeFile(Path folder, int take) {
        if (take < 1) {
            throw new IllegalArgumentException("take (" + take + ") must be 1 or more");
        }
        return folder.resolve(String.format(Locale.ROOT, "take-%03d.wav", take));
    }

    /**
     * Begins the recording of a take. If a kill left a file of that name, it is renamed and kept.
     *
     * @param take take number, from 1
     * @param rate samples per second
     * @param start when the take's first sample sounds, on the session's audio
     * @throws ProblemException if the file cannot be written
     */
    public TakeRecording record(int take, int rate, StreamTime start) throws ProblemException {
        if (lock.isEmpty()) {
            throw new IllegalStateException("the session " + path + " is open for reading only");
        }
        Path file = takeFile(take);
        try {
            if (Files.exists(file)) {
                Files.move(file, unusedNameFor(take));
            }
        } catch (IOException e) {
            throw DiskProblems.writing(file, e);
        }
        return TakeRecording.create(file, rate, start);
    }

    /**
     * Opens the recording of a take to read it, also while it is being written.
     *
     * @param take take number, from 1
     * @param start when the take's first sample sounds, on the session's audio
     * @return empty if nothing of the take was recorded; a kill may leave a file without any sample
     * @throws ProblemException if the file is there and cannot be read
     */
    public Optional<TakeAudio> audio(int take, StreamTime start) throws ProblemException {
        Path file = takeFile(take);
        return TakeFile.holdsSound(file) ? Optional.of(TakeAudio.open(file, start)) : Optional.empty();
    }

    /**
     * Writes a copy of the script for people to read; the journal has its own.
     *
     * @param source the script's file, as given; plain text stays plain text
     * @param text the script's text
     * @throws ProblemException if it cannot be written
     */
    public void keepScript(String source, String text) throws ProblemException {
        boolean plain = source.toLowerCase(Locale.ROOT).endsWith(".txt");
        Path file = path.resolve(SCRIPT_COPIES.get(plain ? 1 : 0));
        try {
            new AtomicFiles(Access.OWNER).write(file, text);
        } catch (IOException e) {
            throw DiskProblems.writing(file, e);
        }
    }

    /**
     * Leaves the journal open and the folder locked until the program ends, whatever {@link #close} is called for: for a
     * thread that hangs in writing here. So nobody else can write at the same time.
     */
    public void leaveOpen() {
        leftOpen = true;
    }

    /** Closes the journal and unlocks the folder, unless it is left open. Calling it again does nothing. */
    @Override
    public void close() {
        if (leftOpen) {
            return;
        }
        journal.close();
        lock.ifPresent(FolderLock::close);
    }

    static Path journalOf(Path folder) {
        return folder.resolve(SessionFiles.JOURNAL);
    }

    private static void checkSession(Path folder) throws ProblemException {
        if (!isSession(folder)) {
            boolean there = Files.exists(folder);
            throw new ProblemException(
                    there ? "holds no session" : "there is no such folder",
                    folder.toString(),
                    "name the folder of a session");
        }
    }

    private static SessionFolder locked(Path folder, SessionLocks locks) throws ProblemException {
        FolderLock lock = FolderLock.take(folder, locks);
        try {
            return new SessionFolder(folder, SqliteJournal.open(journalOf(folder)), Optional.of(lock));
        } catch (ProblemException e) {
            lock.close();
            throw e;
        }
    }

    private void repairTakes() throws ProblemException {
        try (Stream<Path> entries = Files.list(path)) {
            for (Path take : entries.filter(SessionFolder::isTake).toList()) {
                try (RandomAccessFile file = new RandomAccessFile(take.toFile(), "rw")) {
                    WavHeader.repair(file);
                }
            }
        } catch (IOException e) {
            throw DiskProblems.writing(path, e);
        }
    }

    static boolean isTake(Path file) {
        return file.getFileName().toString().matches("take-\\d{3,}(\\.\\d+)?\\.wav");
    }

    private Path unusedNameFor(int take) {
        int copy = 1;
        Path name;
        do {
            name = path.resolve(String.format(Locale.ROOT, "take-%03d.%d.wav", take, copy++));
        } while (Files.exists(name));
        return name;
    }
}
