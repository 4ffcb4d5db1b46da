package org.bookholder.app.course;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.course.board.LessonState;
import org.bookholder.course.shoot.PlannedSession;
import org.bookholder.course.shoot.RecordingTask;
import org.bookholder.problem.ProblemException;

/** The lessons of a course that are to be read next, in order. */
public final class RunningOrder {
    private RunningOrder() {}

    /**
     * The scripts of the lessons that the plan has for today, or for the next recording day; without a plan, of all lessons
     * that are not recorded.
     *
     * @param folder the course's folder
     * @throws ProblemException if the course can't be read, or all of it is recorded
     */
    public static List<Path> of(Path folder, Environment here) throws ProblemException {
        CourseStatus status = CourseStatus.read(folder, here);
        List<Path> scripts =
                lessons(status).stream().map(state -> state.lesson().file()).toList();
        if (scripts.isEmpty()) {
            throw new ProblemException(
                    "all lessons of this course are recorded", folder.toString(), "name the lesson to read again");
        }
        return scripts;
    }

    /** The lessons of the running order that are not recorded, each once. */
    public static List<LessonState> lessons(CourseStatus status) {
        List<LessonState> open = status.board().lessons().stream()
                .filter(state -> !state.recording().complete())
                .toList();
        Optional<PlannedSession> day = day(status);
        return day.isEmpty()
                ? open
                : day.get().works().stream()
                        .map(RecordingTask::lesson)
                        .distinct()
                        .flatMap(number ->
                                open.stream().filter(state -> state.lesson().number() == number))
                        .toList();
    }

    /** The lessons with these names in their order; those of the plan if there are none. */
    public static List<LessonState> of(CourseStatus status, Optional<List<String>> names) {
        return names.map(kept -> kept.stream()
                        .flatMap(name -> status.board().lessons().stream()
                                .filter(state -> state.lesson().name().equals(name)))
                        .toList())
                .orElseGet(() -> lessons(status));
    }

    /** The planned session of today; the next one if there is none today. */
    public static Optional<PlannedSession> day(CourseStatus status) {
        List<PlannedSession> sessions = status.plan().sessions();
        return sessions.stream()
                .filter(session ->
                        session.date().filter(status.board().today()::equals).isPresent())
                .findFirst()
                .or(() -> sessions.stream().findFirst());
    }
}
