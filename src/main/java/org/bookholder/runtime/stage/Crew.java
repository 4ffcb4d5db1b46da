package org.bookholder.runtime.stage;

/** Runs stages: with threads in the program, in a loop in a test. */
public interface Crew {
    /** Runs a stage until it ends by itself or the crew is stopped. */
    void takeOn(Stage stage);

    /** Additional work of a stage, dropped after its first fault, which {@code faults} receives. */
    default OptionalWork optional(String role, FaultListener faults) {
        return new OptionalWork(role, faults);
    }
}
