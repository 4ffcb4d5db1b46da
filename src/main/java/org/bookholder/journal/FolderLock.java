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
 * Keeps a session's folder to one writer: an operating-system lock on its file {@code lock}, which goes with the process
 * however that ends. The file itself stays.
 */
final class FolderLock implements AutoCloseable {
    private static final String FILE = "lock";

    private final SessionLocks locks;
    private final Path key;
    private final FileChannel channel;

    private FolderLock(SessionLocks locks, Path key, FileChannel channel) {
        this.locks = locks;
        this.key = key;
        this.channel = channel;
    }

    /** Locks a folder that exists, or tells that it is open elsewhere or cannot be written. */
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
                "close it there first, or name another folder");
    }

    /** Whether someone has the folder locked; for a moment it may seem so to others. False if that cannot be told. */
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

    /** Whether a file of a session's folder is the lock's. */
    static boolean isLockFile(Path file) {
        return file.endsWith(FILE);
    }

    private static Optional<FolderLock> tryTake(Path folder, SessionLocks locks) throws IOException {
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
            // Locked in this process under other SessionLocks, as tests do that stand for another process.
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

    /** Unlocks; calling it again does nothing. */
    @Override
    public void close() {
        if (!channel.isOpen()) {
            return;
        }
        try {
            channel.close();
        } catch (IOException e) {
            // The lock goes with the handle, and the handle is gone either way.
        }
        locks.remove(key);
    }
}
