package org.bookholder.session;

import java.time.Duration;

/**
 * What follows a lesson in the running order of the day. It is no part of a session: views are told of it beside the
 * state.
 *
 * @param title the next lesson's title; empty if none is left
 * @param length how long the next lesson will run when it is read
 * @param more how many lessons are left after that one
 * @param dayEnds time of day at which the last one is likely to be done, as shown to people; empty if unknown
 */
public record UpNext(String title, Duration length, int more, String dayEnds) {
    /** Whether a lesson is left. */
    public boolean isLeft() {
        return !title.isEmpty();
    }
}
