package org.bookholder.app.course;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.course.Course;
import org.bookholder.course.CourseReader;
import org.bookholder.course.EditingProgress;
import org.bookholder.course.Lesson;
import org.bookholder.problem.ProblemException;

/** Marks lessons as edited, which only people can know, with undo. Used by one thread at a time. */
public final class EditMarks {
    /** Largest number of hours accepted for an edit. */
    public static final double MOST_HOURS = 1000;

    private final Environment here;
    private final Path folder;
    private final Deque<Before> before = new ArrayDeque<>();

    /** The state of a lesson before it was marked. */
    private record Before(String lesson, Optional<EditingProgress.Edited> edited) {}

    public EditMarks(Environment here, Path folder) {
        this.here = here;
        this.folder = folder;
    }

    /** How many marks can be undone, one after another. */
    int undoable() {
        return before.size();
    }

    /**
     * Marks a lesson as edited, or as not edited after all.
     *
     * @param hours hours that the edit took; 0 if not given
     */
    public void edited(String name, boolean done, double hours) throws ProblemException {
        Lesson lesson = lesson(name);
        EditingProgress progress = EditingProgress.read(folder);
        progress.edited(here.clock().instant(), lesson, done, hours).write(folder);
        before.push(new Before(lesson.name(), progress.edited(lesson)));
    }

    /** Undoes the last mark. Nothing is deleted: a new mark overrides the earlier one. */
    void undo() throws ProblemException {
        if (before.isEmpty()) {
            throw new ProblemException("there is nothing to take back", folder.toString(), "mark a lesson first");
        }
        Before last = before.element();
        Instant when = last.edited()
                .map(EditingProgress.Edited::when)
                .orElse(here.clock().instant());
        double hours = last.edited().map(EditingProgress.Edited::hours).orElse(0.0);
        EditingProgress.read(folder)
                .edited(when, lesson(last.lesson()), last.edited().isPresent(), hours)
                .write(folder);
        before.pop();
    }

    private Lesson lesson(String name) throws ProblemException {
        Course course = CourseReader.readable(folder);
        return course.lesson(name)
                .orElseThrow(() -> new ProblemException(
                        "the course has no lesson '" + name + "'",
                        folder.toString(),
                        "name one of "
                                + String.join(
                                        ", ",
                                        course.lessons().stream()
                                                .map(Lesson::name)
                                                .toList())));
    }
}
