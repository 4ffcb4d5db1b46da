package org.bookholder.app.course;

import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.CourseHabits;
import org.bookholder.course.Course;
import org.bookholder.course.CourseReader;
import org.bookholder.course.Lesson;
import org.bookholder.course.RecordedSession;
import org.bookholder.journal.Replay;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;

/**
 * A lesson with its sessions.
 *
 * @param course the course that has it
 * @param lesson the lesson, as its file is now
 * @param sessions its sessions, the oldest first; none if nothing was recorded
 * @param unreadable the reasons why sessions, of this lesson or of another, could not be read, one line each
 */
public record LessonSessions(Course course, Lesson lesson, List<RecordedSession> sessions, List<String> unreadable) {
    /** Copies the lists. */
    public LessonSessions {
        sessions = List.copyOf(sessions);
        unreadable = List.copyOf(unreadable);
    }

    /** What whoever hands off a session should know of the lesson's other sessions, one sentence; empty if there are none. */
    public static Optional<String> handedOffAlone(Path session, Environment here) {
        try (SessionFolder folder = SessionFolder.openForReading(session)) {
            Optional<Path> script = Replay.firstOpened(folder.events()).map(opened -> Path.of(opened.source()));
            Optional<LessonSessions> found = script.isEmpty() ? Optional.empty() : of(script.get(), here);
            return found.map(lesson -> lesson.sessions().size())
                    .filter(count -> count > 1)
                    .map(count -> "This lesson was read in " + count
                            + " sessions, and this is one of them alone; hand off the lesson to have all in one"
                            + " (bookholder handoff " + script.get() + ")");
        } catch (ProblemException e) {
            return Optional.empty();
        }
    }

    /**
     * Finds the sessions of a lesson's file.
     *
     * @return empty if the course around the file does not have it
     * @throws ProblemException if the course cannot be read
     */
    public static Optional<LessonSessions> of(Path file, Environment here) throws ProblemException {
        Path script = file.toAbsolutePath().normalize();
        Course course = CourseReader.readable(CourseHabits.courseOf(script));
        Optional<Lesson> lesson = course.lessons().stream()
                .filter(l -> l.file().toAbsolutePath().normalize().equals(script))
                .findFirst();
        if (lesson.isEmpty()) {
            return Optional.empty();
        }
        CourseSessions all = CourseSessions.of(course.lessons(), course.sessions(), here);
        List<RecordedSession> sessions = all.byLesson().getOrDefault(lesson.get(), List.of()).stream()
                .sorted(Comparator.comparing(RecordedSession::began))
                .toList();
        return Optional.of(new LessonSessions(course, lesson.get(), sessions, all.unreadable()));
    }
}
