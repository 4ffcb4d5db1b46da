package org.bookholder.app.course;

import java.nio.file.Path;
import java.util.List;
import org.bookholder.course.Course;
import org.bookholder.course.CourseReader;
import org.bookholder.course.Lesson;
import org.bookholder.problem.ProblemException;

/**
 * Finds the lesson that a person means.
 *
 * @param folder the course's folder
 */
record LessonChoice(Path folder) {
    /**
     * The lesson that a person means by a name, a title or a number.
     *
     * @throws ProblemException if there is none, or more than one
     */
    Lesson meant(String said) throws ProblemException {
        Course course = CourseReader.readable(folder);
        List<Lesson> meant = course.meant(said);
        if (meant.size() > 1) {
            throw new ProblemException(
                    "'" + said + "' may be any of " + meant.size() + " lessons",
                    folder.toString(),
                    "write which one: "
                            + String.join(
                                    ", or ",
                                    meant.stream()
                                            .map(lesson -> lesson.name() + " (number " + lesson.number() + ", "
                                                    + lesson.title() + ")")
                                            .toList()));
        }
        return meant.isEmpty() ? named(said) : meant.get(0);
    }

    /** The lesson of that name; a problem if there is none. */
    Lesson named(String name) throws ProblemException {
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
