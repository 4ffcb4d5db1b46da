package org.bookholder.course.edit;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The edit of one lesson.
 *
 * @param name the lesson's name
 * @param minutes finished minutes
 * @param hours how many hours it is thought to take
 * @param done the day on which it was done, if it is
 * @param took the hours it took, if that was said
 * @param recorded the day on which the last of it is to be recorded; empty if it is, or nobody knows when it will be
 */
public record EditTask(
        String name,
        double minutes,
        double hours,
        Optional<LocalDate> done,
        OptionalDouble took,
        Optional<LocalDate> recorded) {
    /** Whether it can be edited from {@code day} on: what is recorded on a day can from the next. */
    boolean canBeginOn(LocalDate day) {
        return recorded.filter(last -> !last.isBefore(day)).isEmpty();
    }
}
