package org.bookholder.journal.sqlite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.files.PrivateFiles;
import org.bookholder.files.RunFolder;
import org.bookholder.problem.ProblemException;

/**
 * A temporary copy of a journal that lies where nothing can be written. To read a journal, SQLite writes an index beside it
 * (sqlite.org/wal.html, section 5), and a file that it takes for immutable is read without its log.
 */
final class ReadableCopy {
    /** Whoever writes it on another machine may change one of the files between two copies. */
    private static final int TRIES = 3;

    private final RunFolder folder;

    private ReadableCopy(RunFolder folder) {
        this.folder = folder;
    }

    /** Copies a journal if its folder cannot be written; the copy can be read by its owner only. */
    static Optional<ReadableCopy> ifNeeded(Path journal) throws ProblemException {
        Path place = journal.toAbsolutePath().getParent();
        if (place == null || Files.isWritable(place)) {
            return Optional.empty();
        }
        try {
            ReadableCopy copy = new ReadableCopy(RunFolder.temporary());
            try {
                copy.take(journal);
                return Optional.of(copy);
            } catch (IOException e) {
                copy.discard();
                throw e;
            }
        } catch (IOException e) {
            throw ProblemException.noTemporaryRoom(e);
        }
    }

    Path file() {
        return beside("");
    }

    void discard() {
        try {
            folder.close();
        } catch (IOException e) {
            // The next run deletes it.
        }
    }

    private Path beside(String ending) {
        return folder.path().resolve("journal.db" + ending);
    }

    private void take(Path journal) throws IOException {
        String before = "";
        String after = stamp(journal);
        for (int i = 0; i < TRIES && !before.equals(after); i++) {
            before = after;
            for (String ending : List.of("", "-wal")) {
                Path part = journal.resolveSibling(journal.getFileName() + ending);
                Path copy = beside(ending);
                Files.deleteIfExists(copy);
                if (Files.exists(part)) {
                    PrivateFiles.copy(part, copy);
                }
            }
            after = stamp(journal);
        }
    }

    private static String stamp(Path journal) {
        StringBuilder stamp = new StringBuilder();
        for (String ending : List.of("", "-wal")) {
            Path part = journal.resolveSibling(journal.getFileName() + ending);
            stamp.append(part.toFile().length())
                    .append(' ')
                    .append(part.toFile().lastModified());
        }
        return stamp.toString();
    }
}
