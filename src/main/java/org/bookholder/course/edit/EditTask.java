package org.bookholder.course.edit;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The edit of one lesson.
 *
 * @param name the lesson's name
 * @param minutes finished minutes
 * @param hours how many hours it was expected to take before any of the course was edited
 * @param left how many hours it will still take, by what is known now; 0 if it is finished
 * @param done the day on which it was finished, if it is
 * @param took the hours it took, if given
 * @param waits whether it is not recorded and has no day for that, so that nobody knows when it can be edited
 * @param recorded the day on which its last part will be recorded; empty if that is done or the day is unknown
 */
public record EditTask(
        String name,
        double minutes,
        double hours,
        double left,
        Optional<LocalDate> done,
        OptionalDouble took,
        boolean waits,
        Optional<LocalDate> recorded) {
    /** A lesson that takes as long as was expected, and can be edited when it is recorded. */
    public EditTask(
            String name,
            double minutes,
            double hours,
            Optional<LocalDate> done,
            OptionalDouble took,
            Optional<LocalDate> recorded) {
        this(name, minutes, hours, done.isPresent() ? 0 : hours, done, took, false, recorded);
    }

    /** What is left of it, as a task of its own. */
    EditTask rest() {
        return new EditTask(name, minutes, left, left, done, took, waits, recorded);
    }

    /** Whether it can be edited from {@code day} on; a recording can be edited from the day after. */
    boolean canBeginOn(LocalDate day) {
        return recorded.filter(last -> !last.isBefore(day)).isEmpty();
    }
}
