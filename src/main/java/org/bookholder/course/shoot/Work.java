package org.bookholder.course.shoot;

import java.time.Duration;

/**
 * Something to be recorded without a change of lesson: a lesson, a part of one, or its pickups.
 *
 * @param lesson the lesson's number, from 1
 * @param name the lesson's name
 * @param what which part of it, for people: "whole", "part 1 of 2", "3 pickups"
 * @param length time before the camera, above zero
 * @param hardness hard stretches for each hundred words
 */
public record Work(int lesson, String name, String what, Duration length, double hardness) {
    /** Checks the length. */
    public Work {
        if (length.isZero() || length.isNegative()) {
            throw new IllegalArgumentException("length (" + length + ") must be above zero");
        }
    }

    Work part(int number, int of, Duration partLength) {
        return new Work(lesson, name, "part " + number + " of " + of, partLength, hardness);
    }
}
