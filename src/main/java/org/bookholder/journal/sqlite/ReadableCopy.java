package org.bookholder.journal.sqlite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.files.PrivateFiles;
import org.bookholder.problem.ProblemException;

/**
 * A temporary copy of a journal that lies where nothing can be written. To read a journal, SQLite writes an index beside it
 * (sqlite.org/wal.html, section 5), and a file that it takes for immutable is read without its log.
 */
final class ReadableCopy {
    /** Whoever writes it on another machine may change one of the files between two copies. */
    private static final int TRIES = 3;

    private final Path folder;
    private final Path file;

    private ReadableCopy(Path folder, Path file) {
        this.folder = folder;
        this.file = file;
    }

    /** Copies a journal if its folder cannot be written; the copy can be read by its owner only. */
    static Optional<ReadableCopy> ifNeeded(Path journal) throws ProblemException {
        Path place = journal.toAbsolutePath().getParent();
        if (place == null || Files.isWritable(place)) {
            return Optional.empty();
        }
        try {
            Path folder = Files.createTempDirectory("bookholder-journal-");
            ReadableCopy copy = new ReadableCopy(folder, folder.resolve("journal.db"));
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
        return file;
    }

    void discard() {
        for (String ending : List.of("", "-wal", "-shm")) {
            delete(folder.resolve("journal.db" + ending));
        }
        delete(folder);
    }

    private void take(Path journal) throws IOException {
        String before = "";
        String after = stamp(journal);
        for (int i = 0; i < TRIES && !before.equals(after); i++) {
            before = after;
            for (String ending : List.of("", "-wal")) {
                Path part = journal.resolveSibling(journal.getFileName() + ending);
                Path copy = folder.resolve("journal.db" + ending);
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

    private static void delete(Path path) {
        try {
            Files.deleteIfExists(path);
        } catch (IOException e) {
            // A temporary file left behind does no harm.
        }
    }
}
