package org.bookholder.runtime.stage;

/** A piece of work that is done in small steps and does not depend on any thread. */
public interface Stage {
    /** What it does, in one or two lower-case words; used as the name of its thread and in log entries. */
    String role();

    /** What happens after a fault in it. */
    Criticality criticality();

    /**
     * Prepares the stage. Called on the thread that will call {@link #doWork()}, once, and again after each restart.
     */
    default void onStart() throws Exception {}

    /**
     * Does the work that is available now, without blocking.
     *
     * @return the amount of work done; 0 lets the thread idle for a few milliseconds, a negative number ends the stage
     */
    int doWork() throws Exception;

    /** Releases resources; called on the same thread, once after each {@link #onStart()}, even after a fault. */
    default void onClose() throws Exception {}

    /**
     * Called after the last close if the stage has failed and will not be restarted. Must release everyone who is
     * waiting for it.
     */
    default void onGivenUp() throws Exception {}
}
