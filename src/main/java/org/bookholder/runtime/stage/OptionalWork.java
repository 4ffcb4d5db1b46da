package org.bookholder.runtime.stage;

import java.util.function.Supplier;

/**
 * Work that a stage does beside its own and that is done without after its first fault. Confined to the stage's thread.
 */
public final class OptionalWork {
    private final String role;
    private final FaultListener faults;
    private boolean givenUp;

    /** Names the work, and who is told of its fault. */
    public OptionalWork(String role, FaultListener faults) {
        this.role = role;
        this.faults = faults;
    }

    /** What the work yields; {@code otherwise} if it fails or has failed before. */
    public <T> T get(Supplier<T> work, T otherwise) {
        if (givenUp) {
            return otherwise;
        }
        try {
            return work.get();
        } catch (RuntimeException cause) {
            givenUp = true;
            faults.failed(new StageFault(role, StageFault.Consequence.GIVEN_UP, cause));
            return otherwise;
        }
    }
}
