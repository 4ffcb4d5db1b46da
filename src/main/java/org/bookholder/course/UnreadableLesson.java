package org.bookholder.course;

import java.nio.file.Path;
import java.util.Optional;

/**
 * A lesson whose script can't be read as it is.
 *
 * @param number its place in the course, from 1
 * @param name what it would be called if it could be read
 * @param file its script
 * @param module the module in which it stands, if it stands in one
 * @param unwritten whether it only has no words yet
 * @param why where in the course's folder something is wrong, what, and what to do; one line
 */
public record UnreadableLesson(
        int number, String name, Path file, Optional<CourseModule> module, boolean unwritten, String why) {
    /** The name of its file. */
    public String fileName() {
        return String.valueOf(file.getFileName());
    }

    /** How far it has come, as people see it. */
    public String state() {
        return unwritten ? "to be written" : "can't be read";
    }
}
