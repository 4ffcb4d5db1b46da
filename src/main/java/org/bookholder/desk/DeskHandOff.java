package org.bookholder.desk;

import java.nio.file.Path;
import java.util.Optional;

/** The editor's files of a session, and who writes them. Safe for use by several threads; nothing here waits. */
public interface DeskHandOff {
    /** How they stand. */
    HandOffStatus now();

    /**
     * Asks for them to be written.
     *
     * @param replace whether files that are there already may be replaced
     * @return why they cannot be, for people; empty if it was begun, and {@link #now} tells what comes of it
     */
    Optional<String> ask(boolean replace);

    /** The file of that name, if it is one of {@link #now} and a plain file still. */
    Optional<Path> file(String name);
}
