package org.bookholder.course.shoot;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * The recording sessions still to come.
 *
 * @param sessions in order of time
 * @param left tasks that did not fit
 * @param why reasons, each one sentence that also says what to do; empty if nothing is left
 * @param over how many of the given days are already past
 * @param free the given days that are not needed
 */
public record SessionPlan(
        List<PlannedSession> sessions, List<RecordingTask> left, List<String> why, int over, List<LocalDate> free) {
    /** Copies the lists. */
    public SessionPlan {
        sessions = List.copyOf(sessions);
        left = List.copyOf(left);
        why = List.copyOf(why);
        free = List.copyOf(free);
    }

    /** The day on which the last part of a lesson will be recorded; empty if there is none. */
    public Optional<LocalDate> day(int lesson) {
        return sessions.stream()
                .filter(session -> session.works().stream().anyMatch(work -> work.lesson() == lesson))
                .reduce((earlier, later) -> later)
                .flatMap(PlannedSession::date);
    }
}
