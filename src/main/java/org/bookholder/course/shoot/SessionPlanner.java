package org.bookholder.course.shoot;

import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.course.Shooting;
import org.bookholder.course.Shooting.Day;

/**
 * Divides the remaining recording tasks into sessions.
 *
 * <p>The last lesson is to be recorded early; then few sessions are to be needed; then little is to be set up anew; then the lessons stay in
 * order ({@link EarliestPlacing}); unless they are to stay in order, or to begin with the hardest. A lesson is split only if no session could
 * hold all of it. Within a session tasks of one kind are read one after another, of them the hardest first, while the voice is fresh.
 */
public final class SessionPlanner {
    /** The most parts into which a lesson is split. */
    static final int MOST_PARTS = 20;

    private final SessionCapacities rooms;

    /** The tasks to record, in order; lessons that are too long are split into parts. */
    private final List<RecordingTask> works;

    private SessionPlanner(SessionCapacities rooms, List<RecordingTask> works) {
        this.rooms = rooms;
        this.works = works;
    }

    /**
     * Plans sessions.
     *
     * @param works the tasks to record, in order
     * @param shooting the days available; if there are none, as many sessions of the usual length as needed
     * @param today earlier days are past
     */
    public static SessionPlan plan(List<RecordingTask> works, Shooting shooting, Terms terms, LocalDate today) {
        List<Day> days = shooting.days().stream()
                .filter(day -> !day.date().isBefore(today))
                .toList();
        boolean dated = !shooting.days().isEmpty();
        int over = shooting.days().size() - days.size();
        if (works.isEmpty()) {
            return new SessionPlan(List.of(), List.of(), List.of(), over, dates(days));
        }
        if (dated && days.isEmpty()) {
            return new SessionPlan(
                    List.of(), works, List.of("every recording day is over; add new days"), over, List.of());
        }
        if (!dated) {
            days = List.of(new Day(LocalDate.EPOCH, Shooting.USUAL_START, Shooting.USUAL_LENGTH));
        }
        SessionCapacities kinds = new SessionCapacities(days, dated, terms);
        List<RecordingTask> parts = kinds.asPlanned(works).stream()
                .flatMap(work -> parts(work, kinds).stream())
                .toList();
        return new SessionPlanner(kinds.of(parts.size()), parts).plan(kinds, over);
    }

    /**
     * Splits a task into as few even parts as the longest day requires; keeps it whole if it fits, or if no part would
     * fit anywhere.
     */
    private static List<RecordingTask> parts(RecordingTask work, SessionCapacities rooms) {
        for (int of = 1; of <= Math.min(MOST_PARTS, work.minutes()); of++) {
            List<RecordingTask> parts = work.parts(of);
            if (rooms.holdAlone(parts.get(0))) {
                return parts;
            }
        }
        return List.of(work);
    }

    private SessionPlan plan(SessionCapacities kinds, int over) {
        Assignment placed = EarliestPlacing.of(rooms, works);
        List<RecordingTask> left = placed.left();
        return new SessionPlan(
                placed.sessions(),
                left,
                left.isEmpty() ? List.of() : ShortageReasons.why(kinds, works, left),
                over,
                kinds.dated() ? free(kinds, placed.sessions()) : List.of());
    }

    private static List<LocalDate> free(SessionCapacities kinds, List<PlannedSession> sessions) {
        List<LocalDate> free = new ArrayList<>(dates(kinds.given()));
        sessions.forEach(session -> session.date().ifPresent(free::remove));
        return free;
    }

    private static List<LocalDate> dates(List<Day> days) {
        return days.stream().map(Day::date).toList();
    }

    static Duration sum(List<RecordingTask> works) {
        return Duration.ofMinutes(RecordingTask.minutesOf(works));
    }
}
