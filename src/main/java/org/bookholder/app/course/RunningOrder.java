package org.bookholder.app.course;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
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
     * A lesson that is to be read.
     *
     * @param script its file
     * @param on where it goes on if it was begun
     */
    public record Turn(Path script, ReadingOn on) {}

    /**
     * The lessons that the plan has for today, or for the next recording day; without a plan, all lessons that are not recorded. A
     * lesson that was begun today comes first.
     *
     * @param folder the course's folder
     * @param presenter the presenter whose sessions go on
     * @param anew whether each lesson gets a session of its own
     * @throws ProblemException if the course or a script can't be read, or all of it is recorded
     */
    public static List<Turn> of(Path folder, String presenter, boolean anew, Environment here) throws ProblemException {
        CourseOverview course = CourseOverview.read(folder, here);
        List<Turn> turns = new ArrayList<>();
        for (LessonState state : lessons(course.status(), here.zone())) {
            ReadingOn on = anew ? ReadingOn.anew(state) : ReadingOn.of(course, state, presenter, here);
            turns.add(new Turn(state.lesson().file(), on));
        }
        if (turns.isEmpty()) {
            throw new ProblemException(
                    "all lessons of this course are recorded", folder.toString(), "name the lesson to read again");
        }
        return turns;
    }

    /**
     * The lessons that were begun today and have lines that nobody has read, the last one first. They come before what the plan has.
     *
     * @param zone the time zone of the day
     */
    public static List<LessonState> begun(CourseStatus status, ZoneId zone) {
        LocalDate today = status.board().today();
        return status.board().lessons().stream()
                .filter(state -> state.recording().begun()
                        && !state.recording().unread().isEmpty()
                        && LocalDate.ofInstant(state.recording().last().orElseThrow(), zone)
                                .equals(today))
                .sorted(Comparator.comparing(
                                (LessonState state) -> state.recording().last().orElseThrow())
                        .reversed())
                .toList();
    }

    /** The lessons of the running order that are not recorded, each once. */
    public static List<LessonState> lessons(CourseStatus status, ZoneId zone) {
        List<LessonState> all = new ArrayList<>(begun(status, zone));
        planned(status).stream().filter(state -> !all.contains(state)).forEach(all::add);
        return all;
    }

    private static List<LessonState> planned(CourseStatus status) {
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
    public static List<LessonState> of(CourseStatus status, ZoneId zone, Optional<List<String>> names) {
        return names.map(kept -> kept.stream()
                        .flatMap(name -> status.board().lessons().stream()
                                .filter(state -> state.lesson().name().equals(name)))
                        .toList())
                .orElseGet(() -> lessons(status, zone));
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
