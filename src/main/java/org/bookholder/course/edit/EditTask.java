package org.bookholder.course.edit;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The edit of one lesson.
 *
 * @param name the lesson's name
 * @param minutes finished minutes
 * @param hours how many hours it is expected to take
 * @param done the day on which it was finished, if it is
 * @param took the hours it took, if given
 * @param recorded the day on which its last part will be recorded; empty if that is done or the day is unknown
 */
public record EditTask(
        String name,
        double minutes,
        double hours,
        Optional<LocalDate> done,
        OptionalDouble took,
        Optional<LocalDate> recorded) {
    /** Whether it can be edited from {@code day} on; a recording can be edited from the day after. */
    boolean canBeginOn(LocalDate day) {
        return recorded.filter(last -> !last.isBefore(day)).isEmpty();
    }
}
