package org.bookholder.app.course;

import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.app.day.DayService;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.TargetPaces;
import org.bookholder.course.Course;
import org.bookholder.course.CourseReader;
import org.bookholder.course.Lesson;
import org.bookholder.course.LessonScripts;
import org.bookholder.course.RecordedSession;
import org.bookholder.course.shoot.ChosenDays;
import org.bookholder.problem.ProblemException;

/**
 * A course as it stands, with its sessions.
 *
 * @param status board and plan
 * @param sessions the sessions of each lesson that has any
 */
public record CourseOverview(CourseStatus status, Map<Lesson, List<RecordedSession>> sessions) {
    /** Copies the map. */
    public CourseOverview {
        sessions = Map.copyOf(sessions);
    }

    /** A course that is read by the only presenter at this machine. */
    public static CourseOverview read(Path folder, Environment here) throws ProblemException {
        return read(folder, new TargetPaces(here, DayService.SOLE_PRESENTER), here);
    }

    /** A course whose lessons are to be read at these paces. */
    static CourseOverview read(Path folder, TargetPaces paces, Environment here) throws ProblemException {
        Course course = paces.aimed(CourseReader.readable(folder, new LessonScripts(here.sideBySide())));
        CourseSessions sessions = CourseSessions.of(course.lessons(), course.sessions(), here);
        return new CourseOverview(CourseStatus.of(course, sessions, here, ChosenDays::plan), sessions.byLesson());
    }

    /** The session of a lesson that began last. */
    public Optional<RecordedSession> newest(Lesson lesson) {
        return sessions.getOrDefault(lesson, List.of()).stream().max(Comparator.comparing(RecordedSession::began));
    }

    /** The session in which a lesson's open lines are picked up. */
    public Optional<RecordedSession> toPickUp(Lesson lesson) {
        return PickupSession.of(sessions.getOrDefault(lesson, List.of()));
    }
}
