package org.bookholder.course;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;

/**
 * How a course will be recorded.
 *
 * @param days the days available for recording, in order; none if they are not known yet
 * @param setUp time to set up before the first take of a session
 * @param ratio recorded time for each finished minute, if it was written down
 * @param order in which order
 */
public record Shooting(List<Day> days, Duration setUp, Optional<Double> ratio, ReadingOrder order) {
    /** Common practice for scripted lessons: 1.25 to 2; a university's audio editors discard a fifth, which is 1.25. */
    public static final double USUAL_RATIO = 1.5;

    /** Common practice. */
    public static final Duration USUAL_SET_UP = Duration.ofMinutes(30);

    /** Common practice: a session of 2 to 3 hours. */
    public static final Duration USUAL_LENGTH = Duration.ofHours(3);

    /** When sessions begin unless something else is written down. */
    public static final LocalTime USUAL_START = LocalTime.of(10, 0);

    /** Copies the list. */
    public Shooting {
        days = List.copyOf(days);
    }

    /** A course that is recorded in whatever order finishes early. */
    public Shooting(List<Day> days, Duration setUp, Optional<Double> ratio) {
        this(days, setUp, ratio, ReadingOrder.FREE);
    }

    /** The same on other days. */
    public Shooting on(List<Day> other) {
        return new Shooting(other, setUp, ratio, order);
    }

    /**
     * A day for recording.
     *
     * @param date the day
     * @param from when the studio is free
     * @param length for how long, set-up and breaks included
     * @param lessons the names of the lessons that somebody has put on it
     */
    public record Day(LocalDate date, LocalTime from, Duration length, List<String> lessons) {
        /** Copies the list. */
        public Day {
            lessons = List.copyOf(lessons);
        }

        /** A day on which nobody has put lessons. */
        public Day(LocalDate date, LocalTime from, Duration length) {
            this(date, from, length, List.of());
        }
    }
}
