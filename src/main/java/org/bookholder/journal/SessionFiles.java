package org.bookholder.journal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.bookholder.files.DiskProblems;
import org.bookholder.journal.sqlite.JournalCopy;
import org.bookholder.problem.ProblemException;

/**
 * The files in a session's folder that make up the session, and can go on in another place. Locks, the desk's keys, the log
 * of faults, and what can be made again are not among them.
 */
public final class SessionFiles {
    /** The journal's name. */
    public static final String JOURNAL = "journal.db";

    /** Whatever begins with {@code take-} is sound of a take, also a second file of it, or one that a kill left. */
    private static final Pattern OTHERS =
            Pattern.compile("take-[0-9A-Za-z._-]{1,100}\\.wav|script\\.(md|txt)|footage\\.json");

    private SessionFiles() {}

    /** Whether a file of this name belongs to a session. */
    public static boolean belongs(String name) {
        return name.equals(JOURNAL) || OTHERS.matcher(name).matches();
    }

    /** Whether a file of this name holds sound. */
    public static boolean isSound(String name) {
        return name.endsWith(".wav");
    }

    /**
     * All of a session's files but the journal, sorted by name.
     *
     * @throws ProblemException if the folder cannot be read
     */
    public static List<Path> besideJournal(Path session) throws ProblemException {
        return in(session).stream()
                .filter(file ->
                        OTHERS.matcher(String.valueOf(file.getFileName())).matches())
                .toList();
    }

    /** All regular files in a folder, sorted by name. */
    static List<Path> in(Path folder) throws ProblemException {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.filter(Files::isRegularFile).sorted().toList();
        } catch (IOException e) {
            throw DiskProblems.reading(folder, e);
        }
    }

    /**
     * Writes a copy of the journal as it is at one moment: a single file.
     *
     * @param copy an empty file, or one that does not exist
     * @throws ProblemException if the journal cannot be read, or the copy cannot be written
     */
    public static void copyJournal(Path session, Path copy) throws ProblemException {
        JournalCopy.write(SessionFolder.journalOf(session), copy);
    }
}
