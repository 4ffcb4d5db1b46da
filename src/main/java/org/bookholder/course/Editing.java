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
 * @param rates how long an edit takes, for every kind of lesson
 */
public record Editing(
        Optional<LocalDate> from,
        double hoursAWeek,
        int lessonsAWeek,
        double slack,
        Map<LessonKind, EditingRate> rates) {
    /** Common practice for editing alongside other work. */
    public static final double USUAL_HOURS = 10;

    /** Common practice. */
    public static final int USUAL_LESSONS = 3;

    /** A choice of ours: one hour in five. */
    public static final double USUAL_SLACK = 0.2;

    /**
     * Hours for each finished minute of a film that the program made, to look through it: two minutes of work a minute, which an instructor's
     * guide gives for a recorded lecture (climatechangecourse.org/onlinecourses; trade practice).
     */
    public static final double LOOKING_THROUGH = 2 / 60.0;

    /** Copies the map. */
    public Editing {
        rates = Map.copyOf(rates);
    }

    /** Editing hours for a lesson of that kind and length. */
    public double hours(LessonKind kind, double minutes) {
        return rates.getOrDefault(kind, kind.rate()).hours(minutes);
    }
}
