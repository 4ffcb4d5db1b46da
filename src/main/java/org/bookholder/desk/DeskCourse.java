package org.bookholder.desk;

import java.util.Optional;
import org.bookholder.problem.ProblemException;

/** A course as its page shows it. Safe for use by several threads. */
public interface DeskCourse {
    /**
     * What the page shows.
     *
     * @param revision changes whenever anything else does; letters and digits
     * @param json all that the page shows
     */
    record Standing(String revision, String json) {}

    /**
     * What the page shows now; worked out afresh when something on disk has changed.
     *
     * @throws ProblemException if the course cannot be read as it is
     */
    Standing now() throws ProblemException;

    /**
     * The address of the desk at which another process has a session of the course, for one browser of the program's owner. Waits for
     * that process, a few seconds at most.
     *
     * @param session the session's name
     * @return empty if no other process has the session open, or it has no desk
     */
    default Optional<String> deskElsewhere(String session) throws InterruptedException {
        return Optional.empty();
    }

    /**
     * Carries out an action of the page.
     *
     * @param json one object; {@code do} holds the action
     * @return why it cannot be done, for people; empty if it was done
     */
    Optional<String> act(String json);
}
