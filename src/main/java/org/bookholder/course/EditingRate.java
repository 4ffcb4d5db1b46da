package org.bookholder.course;

/**
 * How long an edit takes.
 *
 * @param least hours for a lesson, however short, 0 or more
 * @param perMinute hours for each finished minute of a lesson that is too long for that, above 0
 */
public record EditingRate(double least, double perMinute) {
    /** Hours for a lesson of this length. */
    public double hours(double minutes) {
        return Math.max(least, minutes * perMinute);
    }
}
