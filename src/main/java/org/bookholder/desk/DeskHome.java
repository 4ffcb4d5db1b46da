package org.bookholder.desk;

import java.util.Map;
import java.util.Optional;
import org.bookholder.problem.ProblemException;

/** The program's own page, with the courses that are open as its rooms. Safe for use by several threads. */
public interface DeskHome {
    /**
     * What can be seen of a course.
     *
     * @return empty if no course of that name is known
     * @throws ProblemException if it cannot be opened
     */
    Optional<SessionDirectory> course(String name) throws ProblemException;

    /**
     * Opens a course that a second start of the program was given.
     *
     * @param folder its folder
     * @return why it can't be opened, for people; empty if it was
     */
    Optional<String> open(String folder);

    /** Tells people who were not let in what to do. */
    String asks();

    /** Sends what the page shows. */
    EventFeed feed();

    /**
     * Does what the page asks for.
     *
     * @param json one object, what to do in {@code do}
     * @return why it cannot be done, for people; empty if it was done
     */
    Optional<String> act(String json);

    /**
     * Answers what one of the page's rooms asks for.
     *
     * @param json one object, the room in {@code room}, and what it wants in {@code do}
     * @return one object as JSON
     * @throws ProblemException why it can't be answered or done
     */
    String ask(String json) throws ProblemException;

    /**
     * Answers what is asked about a file that was dropped on the page.
     *
     * @param query what is asked, by names
     * @param bytes what the file holds
     * @return one object as JSON
     * @throws ProblemException why it can't be answered
     */
    String dropped(Map<String, String> query, byte[] bytes) throws ProblemException;

    /**
     * A folder to choose from.
     *
     * @param path the folder; empty for the one to begin with
     * @return its folders and files as JSON
     * @throws ProblemException if it may not or cannot be listed
     */
    String folder(String path) throws ProblemException;

    /**
     * Where a file lies that was dropped on the page.
     *
     * @param name its name
     * @param size its size in bytes
     * @return its path as JSON
     * @throws ProblemException if it is not found
     */
    String find(String name, long size) throws ProblemException;

    /** Somebody who was let in has a page open: each of its requests tells so. */
    void seen();
}
