package org.bookholder.app.film;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.course.CourseSessions;
import org.bookholder.app.environment.Environment;
import org.bookholder.course.Course;
import org.bookholder.course.CourseReader;
import org.bookholder.course.Lesson;
import org.bookholder.course.RecordedSession;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;

/**
 * Which session a film is made of.
 *
 * @param session its folder
 * @param others how many other sessions of the same lesson there are, of which nothing is used
 */
public record FilmPlace(Path session, int others) {
    /**
     * The session that a person named, or the last one of a lesson.
     *
     * @throws ProblemException if there is none
     */
    public static FilmPlace of(Path place, Environment here) throws ProblemException {
        if (SessionFolder.isSession(place)) {
            return new FilmPlace(place, 0);
        }
        if (!Files.isRegularFile(place)) {
            throw new ProblemException(
                    Files.exists(place) ? "holds no session" : "there is no such session or lesson",
                    place.toString(),
                    "name a session's folder or a lesson's file; bookholder sessions lists them");
        }
        Path script = place.toAbsolutePath().normalize();
        Optional<Path> around = CourseReader.around(script);
        Course course = CourseReader.readable(
                around.orElseGet(() -> Optional.ofNullable(script.getParent()).orElse(script)));
        Lesson lesson = course.lessons().stream()
                .filter(l -> l.file().toAbsolutePath().normalize().equals(script))
                .findFirst()
                .orElseThrow(() -> new ProblemException(
                        "is no lesson of the course around it", place.toString(), "add it to course.yaml"));
        List<RecordedSession> sessions = CourseSessions.of(List.of(lesson), course.sessions(), here)
                .byLesson()
                .getOrDefault(lesson, List.of());
        RecordedSession last = sessions.stream()
                .max(Comparator.comparing(RecordedSession::began))
                .orElseThrow(() -> new ProblemException(
                        "nothing was recorded of it yet", place.toString(), "read it first: bookholder read " + place));
        return new FilmPlace(last.folder(), sessions.size() - 1);
    }
}
