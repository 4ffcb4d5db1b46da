package org.bookholder.files;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * A folder for one run of the program, for its owner only. It is deleted when the run ends; if the run is killed, by a later
 * run. A lock on a file in it tells that the run is alive.
 */
public final class RunFolder implements AutoCloseable {
    private static final String NAME = "bookholder-run-";
    private static final String LOCK = "lock";

    private final Path path;
    private final FileChannel lock;

    private RunFolder(Path path, FileChannel lock) {
        this.path = path;
        this.lock = lock;
    }

    /**
     * Deletes what killed runs left in {@code parent}, and creates a folder there, mode 700, with a name that nobody can foresee.
     *
     * @throws IOException if it cannot be created or no file in it can be locked
     */
    public static RunFolder create(Path parent) throws IOException {
        deleteLeftOver(parent);
        Path path = Files.createTempDirectory(parent, NAME);
        // The lock takes its name when it is held, so that another run never sees it free.
        Path unheld = path.resolve(LOCK + ".new");
        FileChannel lock = FileChannel.open(unheld, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        try {
            if (lock.tryLock() == null) {
                throw new IOException("a new file is locked: " + unheld);
            }
            Files.move(unheld, path.resolve(LOCK), StandardCopyOption.ATOMIC_MOVE);
            return new RunFolder(path, lock);
        } catch (IOException e) {
            lock.close();
            delete(path);
            throw e;
        }
    }

    /** The folder. */
    public Path path() {
        return path;
    }

    /** Deletes the folder as far as the system lets it; the next run deletes the rest. */
    @Override
    public void close() throws IOException {
        lock.close();
        delete(path);
    }

    private static void deleteLeftOver(Path parent) throws IOException {
        try (DirectoryStream<Path> runs = Files.newDirectoryStream(parent, NAME + "*")) {
            for (Path run : runs) {
                if (isLeftOver(run)) {
                    delete(run);
                }
            }
        }
    }

    /** Whether its run has ended. Folders of others, and links that others made, cannot be told and are left alone. */
    private static boolean isLeftOver(Path run) {
        if (!Files.isDirectory(run, LinkOption.NOFOLLOW_LINKS)) {
            return false;
        }
        try (FileChannel channel =
                        FileChannel.open(run.resolve(LOCK), StandardOpenOption.WRITE, LinkOption.NOFOLLOW_LINKS);
                FileLock held = channel.tryLock()) {
            return held != null;
        } catch (IOException | OverlappingFileLockException e) {
            return false;
        }
    }

    private static void delete(Path folder) throws IOException {
        List<Path> all;
        try (Stream<Path> files = Files.walk(folder)) {
            all = files.sorted(Comparator.reverseOrder()).toList();
        }
        for (Path file : all) {
            try {
                Files.deleteIfExists(file);
            } catch (IOException e) {
                // A library that is still loaded, on Windows; the next run deletes it.
            }
        }
    }
}
