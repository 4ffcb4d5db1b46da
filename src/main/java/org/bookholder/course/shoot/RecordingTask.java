package org.bookholder.course.shoot;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/**
 * A task to record without changing lessons: a lesson, a part of one, or its pickups.
 *
 * @param lesson the lesson's number, from 1
 * @param name the lesson's name
 * @param what which part of it, as people see it: "whole", "part 1 of 2", "3 pickups"
 * @param length time in front of the camera, whole minutes, 1 or more
 * @param hardness hard stretches for each hundred words
 */
public record RecordingTask(int lesson, String name, String what, Duration length, double hardness) {
    private static final String PART = "part ";

    /** Checks the length. */
    public RecordingTask {
        if (length.isZero() || length.isNegative() || !Terms.wholeMinutes(length)) {
            throw new IllegalArgumentException("length (" + length + ") must be whole minutes above zero");
        }
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
            parts.add(new RecordingTask(lesson, name, PART + number + " of " + of, Duration.ofMinutes(own), hardness));
        }
        return parts;
    }
}
