package org.bookholder.course.agenda;

import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.bookholder.course.board.Board;
import org.bookholder.course.board.LessonState;
import org.bookholder.course.lists.CourseList;
import org.bookholder.course.shoot.PlanChange;
import org.bookholder.course.shoot.PlannedSession;
import org.bookholder.course.shoot.RecordingBacklog;
import org.bookholder.course.shoot.RecordingTask;
import org.bookholder.course.shoot.SessionPlan;
import org.bookholder.course.shoot.Terms;

/**
 * What the work of a day follows from.
 *
 * @param board the course's board, with the days of the plan
 * @param works what is left to record
 * @param plan when it is to be recorded
 * @param terms the conditions of the plan
 * @param launch what belongs to the launch
 * @param lost what the days have changed on which nothing was recorded; empty if there were none
 * @param zone the time zone of days
 * @param order the lessons of the running order
 */
public record AgendaBasis(
        Board board,
        RecordingBacklog works,
        SessionPlan plan,
        Terms terms,
        CourseList launch,
        Optional<PlanChange> lost,
        ZoneId zone,
        Order order) {
    /**
     * The running order.
     *
     * @param lessons the lessons of today or of the next recording day, as they are to be read
     * @param begun those of them that were begun today
     * @param own whether somebody has put together today's order
     */
    public record Order(List<LessonState> lessons, List<LessonState> begun, boolean own) {
        /** Copies the lists. */
        public Order {
            lessons = List.copyOf(lessons);
            begun = List.copyOf(begun);
        }
    }

    LocalDate today() {
        return board.today();
    }

    /** The session that is planned for today; the first one while no days are known. */
    Optional<PlannedSession> session() {
        return plan.sessions().stream()
                .filter(session ->
                        session.date().filter(date -> !date.equals(today())).isEmpty())
                .findFirst();
    }

    /** The lessons to read today, in order. */
    List<LessonState> toRead() {
        return (order.own() || session().isPresent() ? order.lessons() : order.begun())
                .stream().filter(state -> !state.recording().complete()).toList();
    }

    /** What is to be recorded of a lesson today; all that is left of it if the plan has none of it for today. */
    List<RecordingTask> tasks(LessonState state) {
        int number = state.lesson().number();
        List<RecordingTask> planned = session().stream()
                .flatMap(session -> session.works().stream())
                .filter(work -> work.lesson() == number)
                .toList();
        return planned.isEmpty()
                ? works.works().stream().filter(work -> work.lesson() == number).toList()
                : planned;
    }

    /** How long it takes before the camera to read these. */
    Duration camera(List<LessonState> states) {
        return states.stream()
                .flatMap(state -> tasks(state).stream())
                .map(RecordingTask::length)
                .reduce(Duration.ZERO, Duration::plus);
    }

    /** The next session after today. */
    Optional<PlannedSession> next() {
        return plan.sessions().stream()
                .filter(session -> session.date().filter(today()::isBefore).isPresent())
                .findFirst();
    }

    /** The state of a lesson with this number. */
    LessonState state(int number) {
        return board.lessons().stream()
                .filter(state -> state.lesson().number() == number)
                .findFirst()
                .orElseThrow();
    }

    /** A lesson's title as it stands in a sentence. */
    static String quoted(LessonState state) {
        return quoted(state.lesson().title());
    }

    static String quoted(String text) {
        return "\u201c" + text + "\u201d";
    }
}
