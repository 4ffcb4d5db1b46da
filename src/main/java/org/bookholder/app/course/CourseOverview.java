package org.bookholder.app.course;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.course.Lesson;
import org.bookholder.course.RecordedSession;

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

    /** The session of a lesson that began last. */
    public Optional<RecordedSession> newest(Lesson lesson) {
        return sessions.getOrDefault(lesson, List.of()).stream().max(Comparator.comparing(RecordedSession::began));
    }

    /** The session that began last of those in which lines of a lesson are still to be picked up, else the newest. */
    public Optional<RecordedSession> toPickUp(Lesson lesson) {
        return sessions.getOrDefault(lesson, List.of()).stream()
                .filter(session -> !session.state().lines().pickups().isEmpty())
                .max(Comparator.comparing(RecordedSession::began))
                .or(() -> newest(lesson));
    }
}
