package org.bookholder.course;

import java.nio.file.Path;
import java.util.Locale;
import org.bookholder.files.FileNames;
import org.bookholder.script.model.Script;

/**
 * A lesson of a course.
 *
 * @param number its place in the course, from 1
 * @param file its script
 * @param script what the file holds
 * @param kind how much there is to edit
 */
public record Lesson(int number, Path file, Script script, LessonKind kind) {
    /** The script's file name without its ending: what the lesson is called in commands and in names of exports. */
    public String name() {
        return FileNames.stem(file);
    }

    /** The title. */
    public String title() {
        return script.title();
    }

    /** Whether a file has this lesson's name: exactly, or followed by a character that is not a letter or digit. */
    public boolean names(Path export) {
        String own = name().toLowerCase(Locale.ROOT);
        String other = FileNames.stem(export).toLowerCase(Locale.ROOT);
        return other.startsWith(own)
                && (other.length() == own.length() || !Character.isLetterOrDigit(other.charAt(own.length())));
    }
}
