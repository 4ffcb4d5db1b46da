package org.bookholder.runtime.stage;

/** Who is told of faults in stages. Must not wait and must not throw; called on any stage's thread. */
@FunctionalInterface
public interface FaultListener {
    /** A stage has failed. */
    void failed(StageFault fault);

    /** A stage that was started again has worked for a while without another fault. */
    default void recovered(String role) {}
}
