package org.bookholder.runtime.stage;

/**
 * A fault of the program in a stage, or a stage that does not stop.
 *
 * @param role the role of the stage
 * @param consequence what happens now
 * @param cause what went wrong
 */
public record StageFault(String role, Consequence consequence, Throwable cause) {
    /** Consequences of a fault. */
    public enum Consequence {
        /** The stage was essential: the session ends in an orderly way. */
        SESSION_ENDS,
        /** The stage is restarted after a while. */
        RESTARTS,
        /** The session continues without the stage. */
        GIVEN_UP,
        /** The session was over already, but the stage did not end when told to, and its thread was abandoned. */
        LEFT_BEHIND
    }
}
