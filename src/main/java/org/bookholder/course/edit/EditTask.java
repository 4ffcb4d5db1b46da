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
 */
public record EditTask(String name, double minutes, double hours, Optional<LocalDate> done, OptionalDouble took) {}
