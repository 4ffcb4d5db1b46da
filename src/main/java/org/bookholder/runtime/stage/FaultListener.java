package org.bookholder.runtime.stage;

/** Receives faults of stages. Must not block and must not throw; called on any stage's thread. */
@FunctionalInterface
public interface FaultListener {
    /** A stage has failed. */
    void failed(StageFault fault);

    /** A restarted stage has worked for a while without another fault. */
    default void recovered(String role) {}
}
