package org.bookholder.journal;

import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;

/**
 * The session folders that this process has locked. A process creates one when it starts.
 *
 * <p>It is needed because a POSIX lock belongs to the process, and closing any handle of the file releases it (see
 * java.nio.channels.FileLock): a second opening in the same process must not touch the lock's file. Any thread may call
 * it.
 */
public final class SessionLocks {
    private final Set<Path> held = new HashSet<>();

    /** Notes that a folder, by its real path, is being locked; false if it is already. */
    synchronized boolean add(Path folder) {
        return held.add(folder);
    }

    /** Whether this process has locked a folder, by its real path. */
    synchronized boolean has(Path folder) {
        return held.contains(folder);
    }

    /** Notes that a folder is no longer locked. */
    synchronized void remove(Path folder) {
        held.remove(folder);
    }
}
