package org.bookholder.runtime.stage;

import java.util.function.Supplier;

/** Additional work in a stage, which is dropped after its first fault. Confined to the stage's thread. */
public class OptionalWork {
    private final String role;
    private final FaultListener faults;
    private boolean givenUp;

    /** Creates it with a name for the work; {@code faults} receives its fault. */
    public OptionalWork(String role, FaultListener faults) {
        this.role = role;
        this.faults = faults;
    }

    /** The result of the work; {@code otherwise} if it fails or has failed before. */
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
