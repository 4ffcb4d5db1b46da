package org.bookholder.runtime.stage;

/**
 * A fault of the program in a stage, or a stage that does not stop.
 *
 * @param role what the stage does
 * @param consequence what follows
 * @param cause what went wrong
 */
public record StageFault(String role, Consequence consequence, Throwable cause) {
    /** What follows a fault. */
    public enum Consequence {
        /** The stage was essential: the session is to end in order. */
        SESSION_ENDS,
        /** The stage is started again after a while. */
        RESTARTS,
        /** The session goes on without the stage. */
        GIVEN_UP,
        /** The session is over anyway: the stage did not end when it was told to, and its thread was left behind. */
        LEFT_BEHIND
    }
}
