package org.bookholder.desk;

import java.nio.file.Path;
import java.util.Optional;

/** The hand-off of a session as the desk sees it. Safe for use by several threads; no method waits. */
public interface DeskHandOff {
    /** Its status and its files. */
    HandOffStatus now();

    /**
     * Asks for them to be written.
     *
     * @param replace whether files that are there already may be replaced
     * @return why they cannot be written, for people; empty if writing has begun, whose result {@link #now} tells
     */
    Optional<String> ask(boolean replace);

    /** The file of that name, if it is listed in {@link #now} and is still a plain file. */
    Optional<Path> file(String name);
}
