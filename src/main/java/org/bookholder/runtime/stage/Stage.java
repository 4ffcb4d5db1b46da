package org.bookholder.runtime.stage;

/** A piece of work that is done in small steps and knows no thread. */
public interface Stage {
    /** What it does, one or two lower-case words; names its thread and its log entries. */
    String role();

    /** Prepares; called once, on the thread that will call {@link #doWork()}. */
    default void onStart() throws Exception {}

    /**
     * Does what there is to do now, without waiting.
     *
     * @return how much was done; 0 lets the thread idle a few milliseconds, negative ends the stage
     */
    int doWork() throws Exception;

    /** Lets go of what it holds; called once, on the same thread, also after a failure. */
    default void onClose() throws Exception {}
}
