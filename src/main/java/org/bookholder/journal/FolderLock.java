package org.bookholder.journal;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import org.bookholder.files.DiskProblems;
import org.bookholder.files.PrivateFiles;
import org.bookholder.problem.ProblemException;
import org.jspecify.annotations.Nullable;

/**
 * Lets only one process use a folder, such as that of a session: an operating-system lock on the file {@code lock}. The lock is released
 * when the process ends, however it ends; the file stays.
 */
public final class FolderLock implements AutoCloseable {
    private static final String FILE = "lock";

    private final SessionLocks locks;
    private final Path key;
    private final FileChannel channel;

    private FolderLock(SessionLocks locks, Path key, FileChannel channel) {
        this.locks = locks;
        this.key = key;
        this.channel = channel;
    }

    /** Locks an existing folder; a problem if it is open elsewhere or cannot be written. */
    static FolderLock take(Path folder, SessionLocks locks) throws ProblemException {
        try {
            Optional<FolderLock> lock = tryTake(folder, locks);
            if (lock.isPresent()) {
                return lock.get();
            }
        } catch (IOException e) {
            throw DiskProblems.writing(folder.resolve(FILE), e);
        }
        throw new ProblemException(
                "the session is open in another process",
                folder.toString(),
                "end the reading or review there, or press Quit on Bookholder's page; a new session needs another folder");
    }

    /**
     * Whether the folder is locked. While this checks, it may look locked to others for a moment. False if it cannot be
     * found out.
     */
    static boolean isTaken(Path folder, SessionLocks locks) {
        if (!Files.isWritable(folder.resolve(FILE))) {
            return false;
        }
        try {
            Optional<FolderLock> lock = tryTake(folder, locks);
            lock.ifPresent(FolderLock::close);
            return lock.isEmpty();
        } catch (IOException e) {
            return false;
        }
    }

    /** Whether a file in a session's folder is its lock. */
    static boolean isLockFile(Path file) {
        return file.endsWith(FILE);
    }

    /**
     * Locks an existing folder; empty if it is locked already, by this process or another one.
     *
     * @throws IOException if the folder can't be written
     */
    public static Optional<FolderLock> tryTake(Path folder, SessionLocks locks) throws IOException {
        Path key = folder.toRealPath();
        if (!locks.add(key)) {
            return Optional.empty();
        }
        @Nullable FileChannel channel = null;
        boolean taken = false;
        try {
            PrivateFiles.createIfMissing(folder.resolve(FILE));
            channel = FileChannel.open(folder.resolve(FILE), StandardOpenOption.WRITE);
            @Nullable FileLock lock = channel.tryLock();
            taken = lock != null;
            return taken ? Optional.of(new FolderLock(locks, key, channel)) : Optional.empty();
        } catch (OverlappingFileLockException e) {
            // Locked in this process with another SessionLocks: a test that plays the part of another process.
            return Optional.empty();
        } finally {
            if (!taken) {
                locks.remove(key);
                if (channel != null) {
                    channel.close();
                }
            }
        }
    }

    /** Whether this is the file by which a folder is locked. */
    public boolean isFile(Path file) {
        return isLockFile(file);
    }

    /** Unlocks; calling it again does nothing. */
    @Override
    public void close() {
        if (!channel.isOpen()) {
            return;
        }
        try {
            channel.close();
        } catch (IOException e) {
            // Closing releases the lock even if it reports an error.
        }
        locks.remove(key);
    }
}
