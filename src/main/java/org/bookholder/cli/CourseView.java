package org.bookholder.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import org.bookholder.course.Course;
import org.bookholder.course.CourseReader;
import org.bookholder.course.Lesson;
import org.bookholder.course.RecordedSession;
import org.bookholder.course.board.Board;
import org.bookholder.course.board.BoardReader;
import org.bookholder.course.edit.BurnDown;
import org.bookholder.course.edit.EditTasks;
import org.bookholder.course.shoot.RecordingBacklog;
import org.bookholder.course.shoot.SessionPlan;
import org.bookholder.course.shoot.SessionPlanner;
import org.bookholder.course.shoot.Terms;
import org.bookholder.problem.ProblemException;

/**
 * A course as it stands today.
 *
 * @param board its board, with the days of the plan in it
 * @param works what is left to record
 * @param plan when
 * @param terms what the plan keeps to
 */
record CourseView(Board board, RecordingBacklog works, SessionPlan plan, Terms terms) {
    static CourseView read(Path folder, Surroundings here, Terminal terminal) throws ProblemException {
        Course course = CourseReader.read(folder);
        return of(course, CourseSessions.of(course.lessons(), course.sessions(), here, terminal), here);
    }

    /** A course of which the sessions are known. */
    static CourseView of(Course course, Map<Lesson, List<RecordedSession>> sessions, Surroundings here)
            throws ProblemException {
        LocalDate today = here.today();
        Board board = BoardReader.read(course, sessions, today);
        RecordingBacklog works = RecordingBacklog.of(board);
        Terms terms = Terms.of(Limits.of(here), course.shooting().setUp());
        SessionPlan plan = SessionPlanner.plan(works.works(), course.shooting(), terms, today);
        return new CourseView(board.planned(plan::day), works, plan, terms);
    }

    /** How the edit goes against its plan. */
    BurnDown burnDown(ZoneId zone) {
        return BurnDown.of(EditTasks.of(board, zone), board.course().editing(), board.today());
    }
}
