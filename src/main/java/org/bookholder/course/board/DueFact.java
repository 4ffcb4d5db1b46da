package org.bookholder.course.board;

import java.nio.file.Path;
import java.util.List;
import org.bookholder.course.Lesson;
import org.bookholder.script.model.AgeingFact;

/**
 * A fact in a script that needs checking again.
 *
 * @param lesson the lesson whose script contains it
 * @param fact the fact
 * @param exports the exported files in which it is said
 */
public record DueFact(Lesson lesson, AgeingFact fact, List<Path> exports) {
    /** Copies the list. */
    public DueFact {
        exports = List.copyOf(exports);
    }

    /** The line that contains it, as it is read. */
    public String text() {
        return lesson.script().lines().get(fact.line() - 1).text();
    }
}
