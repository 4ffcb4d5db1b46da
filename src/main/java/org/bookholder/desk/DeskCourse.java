package org.bookholder.desk;

import java.util.Optional;
import org.bookholder.problem.ProblemException;

/** A course as its page shows it. Safe for use by several threads. */
public interface DeskCourse {
    /**
     * How it stands.
     *
     * @param revision changes whenever anything else does; letters and digits
     * @param json all that the page shows
     */
    record Standing(String revision, String json) {}

    /**
     * How it stands now, which is worked out anew when something on the disk has changed.
     *
     * @throws ProblemException if something must be put right first
     */
    Standing now() throws ProblemException;

    /**
     * Does what the page asks for.
     *
     * @param json one object, what to do in {@code do}
     * @return why it cannot be done, for people; empty if it was done
     */
    Optional<String> act(String json);
}
