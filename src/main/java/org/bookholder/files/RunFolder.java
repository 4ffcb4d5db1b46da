package org.bookholder.files;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.UserPrincipal;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * A temporary folder of one run of the program, for its owner only. It is deleted when it is closed; if the run is killed, by a
 * later run. A lock on a file in it tells that the run is alive.
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
     * Creates one in the system's folder for temporary files.
     *
     * @throws IOException if there is no room, or it cannot be written
     */
    public static RunFolder temporary() throws IOException {
        return create(Path.of(System.getProperty("java.io.tmpdir", ".")));
    }

    /**
     * Deletes what killed runs left in {@code parent}, and creates a folder there, mode 700, with a name that nobody can foresee.
     *
     * @throws IOException if it cannot be created or no file in it can be locked
     */
    public static RunFolder create(Path parent) throws IOException {
        Path path = Files.createTempDirectory(parent, ownName());
        // If the run is interrupted, the last one first; what lies in it must be registered later.
        path.toFile().deleteOnExit();
        path.resolve(LOCK).toFile().deleteOnExit();
        // The lock takes its name when it is held, so that another run never sees it free.
        Path unheld = path.resolve(LOCK + ".new");
        FileChannel lock = FileChannel.open(unheld, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        try {
            if (lock.tryLock() == null) {
                throw new IOException("a new file is locked: " + unheld);
            }
            Files.move(unheld, path.resolve(LOCK), StandardCopyOption.ATOMIC_MOVE);
            RunFolder run = new RunFolder(path, lock);
            run.deleteLeftOver(parent);
            return run;
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

    /** Deletes what killed runs of the same user left in a folder, if it can be looked into. */
    public void deleteLeftOver(Path parent) {
        try (DirectoryStream<Path> runs = Files.newDirectoryStream(parent, NAME + "*")) {
            UserPrincipal owner = Files.getOwner(path);
            for (Path run : runs) {
                // On POSIX systems, looking at a lock of this process's own would release it.
                if (!String.valueOf(run.getFileName()).startsWith(ownName())
                        && Files.isDirectory(run, LinkOption.NOFOLLOW_LINKS)
                        && isOf(owner, run)
                        && hasEnded(run)) {
                    delete(run);
                }
            }
        } catch (IOException | DirectoryIteratorException e) {
            // What is left there is in nobody's way; a later run may be let in.
        }
    }

    /** How the names of this process's folders begin. */
    private static String ownName() {
        return NAME + ProcessHandle.current().pid() + "-";
    }

    private static boolean isOf(UserPrincipal owner, Path run) throws IOException {
        try {
            return Files.getOwner(run, LinkOption.NOFOLLOW_LINKS).equals(owner);
        } catch (NoSuchFileException gone) {
            // Another run has just deleted it.
            return false;
        }
    }

    /** Whether the run that a folder belongs to has ended; false if that cannot be told. */
    private static boolean hasEnded(Path run) {
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
        } catch (NoSuchFileException gone) {
            // The end of an interrupted run, or another run, was quicker.
            return;
        } catch (UncheckedIOException e) {
            // Somebody else is deleting it, too; the next run deletes what is left.
            return;
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
