package org.bookholder.course.shoot;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.bookholder.course.Shooting;

/**
 * What a plan of sessions says in short: enough to tell later what has moved.
 *
 * @param given the recording days that the course had
 * @param lessons the day on which each lesson that was left would be recorded to its end, by the lesson's name, in the course's order; empty if
 *     there was none
 */
public record PlanDays(List<LocalDate> given, Map<String, Optional<LocalDate>> lessons) {
    /** Copies the list and the map. */
    public PlanDays {
        given = List.copyOf(given);
        lessons = Collections.unmodifiableMap(new LinkedHashMap<>(lessons));
    }

    /** What a plan says. */
    public static PlanDays of(Shooting shooting, SessionPlan plan) {
        List<RecordingTask> tasks = new ArrayList<>(Stream.concat(
                        plan.sessions().stream().flatMap(session -> session.works().stream()), plan.left().stream())
                .toList());
        tasks.sort(Comparator.comparingInt(RecordingTask::lesson));
        Map<String, Optional<LocalDate>> days = new LinkedHashMap<>();
        tasks.forEach(task -> days.put(task.name(), plan.day(task.lesson())));
        return new PlanDays(shooting.days().stream().map(Shooting.Day::date).toList(), days);
    }

    /** The last day on which a lesson is to be recorded. */
    Optional<LocalDate> last() {
        return lessons.values().stream().flatMap(Optional::stream).max(Comparator.naturalOrder());
    }
}
