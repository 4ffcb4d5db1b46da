package org.bookholder.runtime.stage;

/** A piece of work that is done in small steps and knows no thread. */
public interface Stage {
    /** What it does, one or two lower-case words; names its thread and its log entries. */
    String role();

    /** What follows a fault in it. */
    Criticality criticality();

    /**
     * Prepares; called on the thread that will call {@link #doWork()}, once, and once more each time that the stage is
     * started again after a fault.
     */
    default void onStart() throws Exception {}

    /**
     * Does what there is to do now, without waiting.
     *
     * @return how much was done; 0 lets the thread idle a few milliseconds, negative ends the stage
     */
    int doWork() throws Exception;

    /** Lets go of what it holds; called on the same thread, once after each {@link #onStart()}, also after a fault. */
    default void onClose() throws Exception {}

    /** The stage has failed and will not be started again: leaves nobody waiting for it. Called after the last close. */
    default void onGivenUp() throws Exception {}
}
