package org.bookholder.course.shoot;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.course.LessonKind;

/**
 * A task to record without changing lessons: a lesson, a part of one, or its pickups.
 *
 * @param lesson the lesson's number, from 1
 * @param name the lesson's name
 * @param what which part of it, as people see it: "whole", "part 1 of 2", "3 pickups"
 * @param length time in front of the camera, whole minutes, 1 or more
 * @param hardness hard stretches for each hundred words
 * @param kind what kind of lesson it is: lessons of one kind are recorded with one set-up
 */
public record RecordingTask(int lesson, String name, String what, Duration length, double hardness, LessonKind kind) {
    private static final String PART = "part ";

    /** Checks the length. */
    public RecordingTask {
        if (length.isZero() || length.isNegative() || !Terms.wholeMinutes(length)) {
            throw new IllegalArgumentException("length (" + length + ") must be whole minutes above zero");
        }
    }

    /** A task of a lesson with the presenter alone. */
    public RecordingTask(int lesson, String name, String what, Duration length, double hardness) {
        this(lesson, name, what, length, hardness, LessonKind.PRESENTER);
    }

    /** Whether it is all that there is to record of its lesson, and not one part of several. */
    public boolean inOne() {
        return !what.startsWith(PART);
    }

    int minutes() {
        return Math.toIntExact(length.toMinutes());
    }

    /** How many minutes some tasks take together. */
    static int minutesOf(List<RecordingTask> works) {
        return works.stream().mapToInt(RecordingTask::minutes).sum();
    }

    /** Splits it into {@code of} parts, at most one per minute, longest first. */
    List<RecordingTask> parts(int of) {
        if (of == 1) {
            return List.of(this);
        }
        List<RecordingTask> parts = new ArrayList<>();
        for (int number = 1; number <= of; number++) {
            int own = minutes() / of + (number <= minutes() % of ? 1 : 0);
            parts.add(new RecordingTask(
                    lesson, name, PART + number + " of " + of, Duration.ofMinutes(own), hardness, kind));
        }
        return parts;
    }
}
