package org.bookholder.course;

import java.nio.file.Path;
import org.bookholder.files.FileNames;

/**
 * A lesson whose script can't be read as it is.
 *
 * @param number its place in the course, from 1
 * @param file its script
 * @param why where in the course's folder something is wrong, what, and what to do; one line
 */
public record UnreadableLesson(int number, Path file, String why) {
    /** The script's file name without its ending. */
    public String name() {
        return FileNames.stem(file);
    }
}
