package org.bookholder.course;

import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;

/**
 * How a course will be edited.
 *
 * @param from the day on which editing can begin, if known
 * @param hoursAWeek editing hours each week, above 0
 * @param lessonsAWeek the most lessons finished in a week, 1 or more
 * @param slack the part of the hours that is kept free for revisions and retakes, 0 to below 1
 * @param hoursPerMinute editing hours for each finished minute, for every kind of lesson
 */
public record Editing(
        Optional<LocalDate> from,
        double hoursAWeek,
        int lessonsAWeek,
        double slack,
        Map<LessonKind, Double> hoursPerMinute) {
    /** Common practice for editing alongside other work. */
    public static final double USUAL_HOURS = 10;

    /** Common practice. */
    public static final int USUAL_LESSONS = 3;

    /** A choice of ours: one hour in five. */
    public static final double USUAL_SLACK = 0.2;

    /** Copies the map. */
    public Editing {
        hoursPerMinute = Map.copyOf(hoursPerMinute);
    }

    /** Editing hours for a lesson of that kind and length. */
    public double hours(LessonKind kind, double minutes) {
        return minutes * hoursPerMinute.getOrDefault(kind, kind.hoursPerMinute());
    }
}
