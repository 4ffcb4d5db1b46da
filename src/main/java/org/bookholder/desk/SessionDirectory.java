package org.bookholder.desk;

import java.util.Optional;
import org.bookholder.problem.ProblemException;

/** What can be opened at a desk: one session, or a course with its sessions. Safe for use by several threads. */
public interface SessionDirectory {
    /** The name of a desk's only session. */
    String ONLY = "";

    /**
     * The session of that name. It is opened if it is not open yet, which takes as long as reading its journal.
     *
     * @return empty if there is none of that name
     * @throws ProblemException if it cannot be opened
     */
    Optional<ServedSession> session(String name) throws ProblemException;

    /** The course; empty if the desk is for one session. */
    Optional<DeskCourse> course();

    /** The name of the session that is being read; empty if none is. */
    default Optional<String> running() {
        return Optional.empty();
    }

    /** The program's own page, with courses as its rooms; empty if there is none at this address. */
    default Optional<DeskHome> home() {
        return Optional.empty();
    }

    /** A desk for one session only. */
    static SessionDirectory of(ServedSession only) {
        return new SessionDirectory() {
            @Override
            public Optional<ServedSession> session(String name) {
                return name.equals(ONLY) ? Optional.of(only) : Optional.empty();
            }

            @Override
            public Optional<DeskCourse> course() {
                return Optional.empty();
            }
        };
    }
}
