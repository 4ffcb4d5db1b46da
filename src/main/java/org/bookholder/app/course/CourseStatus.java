package org.bookholder.app.course;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.day.DayService;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.BreakLimits;
import org.bookholder.app.session.TargetPaces;
import org.bookholder.course.Course;
import org.bookholder.course.ReadingOrder;
import org.bookholder.course.Shooting;
import org.bookholder.course.board.Board;
import org.bookholder.course.board.BoardReader;
import org.bookholder.course.edit.BurnDown;
import org.bookholder.course.edit.EditTasks;
import org.bookholder.course.lists.CourseList;
import org.bookholder.course.lists.LaunchList;
import org.bookholder.course.lists.ListKind;
import org.bookholder.course.lists.ListMarks;
import org.bookholder.course.shoot.PlanCache;
import org.bookholder.course.shoot.PlanChange;
import org.bookholder.course.shoot.RecordingBacklog;
import org.bookholder.course.shoot.SessionPlan;
import org.bookholder.course.shoot.Terms;
import org.bookholder.problem.ProblemException;

/**
 * The current state of a course.
 *
 * @param board its board, including the days of the plan
 * @param works the work left to record
 * @param plan when it will be done
 * @param terms the conditions of the plan
 * @param lost what the days have changed on which nothing was recorded since the last recording; empty if there were none
 * @param launch what belongs to its launch
 * @param unreadable the reasons why lessons and sessions of the course could not be read, one line each
 */
public record CourseStatus(
        Board board,
        RecordingBacklog works,
        SessionPlan plan,
        Terms terms,
        Optional<PlanChange> lost,
        CourseList launch,
        List<String> unreadable) {
    /** The state of a course that is read by the only presenter at this machine. */
    public static CourseStatus read(Path folder, Environment here) throws ProblemException {
        return read(folder, new TargetPaces(here, DayService.SOLE_PRESENTER), here);
    }

    /** The state of a course whose lessons are to be read at these paces. */
    public static CourseStatus read(Path folder, TargetPaces paces, Environment here) throws ProblemException {
        return CourseOverview.read(folder, paces, here).status();
    }

    /**
     * The state of a course whose sessions are known already, its scripts with the paces at which they are to be read.
     *
     * @param planner makes the plan
     */
    static CourseStatus of(Course course, CourseSessions sessions, Environment here, PlanCache.Planner planner)
            throws ProblemException {
        LocalDate today = here.today();
        Board board = BoardReader.read(course, sessions.byLesson(), today);
        RecordingBacklog works = RecordingBacklog.of(board);
        Terms terms = Terms.of(BreakLimits.of(here), course.shooting().setUp()).with(order(course.shooting()));
        SessionPlan plan = planner.plan(works.works(), course.shooting(), terms, today);
        Optional<PlanChange> lost = PlanChange.byLostDays(
                planner, works.works(), course.shooting(), terms, board.lastRecorded(here.zone()), today, plan);
        CourseList launch = CourseList.of(
                ListKind.LAUNCH,
                LaunchList.of(board),
                course.lessons(),
                ListMarks.read(course.folder()),
                today,
                here.zone());
        List<String> unreadable = new ArrayList<>(course.why());
        unreadable.addAll(sessions.unreadable());
        return new CourseStatus(board.planned(plan::day), works, plan, terms, lost, launch, unreadable);
    }

    /** Without days there is nothing to finish early: the lessons stay as they stand, unless the hardest are to come first. */
    private static ReadingOrder order(Shooting shooting) {
        boolean free = shooting.days().isEmpty() && shooting.order() == ReadingOrder.FREE;
        return free ? ReadingOrder.KEPT : shooting.order();
    }

    /** The same without the lessons, for those who show these as rows. */
    public List<String> besideLessons() {
        return unreadable.subList(course().unreadable().size(), unreadable.size());
    }

    /** The course itself. */
    public Course course() {
        return board.course();
    }

    /** The progress of the edit compared with the plan. */
    public BurnDown burnDown(ZoneId zone) {
        return BurnDown.of(EditTasks.of(board, zone), board.course().editing(), board.today());
    }
}
