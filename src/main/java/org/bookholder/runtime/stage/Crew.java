package org.bookholder.runtime.stage;

/** Who works on stages: threads in the program, a loop in a test. */
public interface Crew {
    /** Takes a stage on and works on it until it ends by itself or the crew is stopped. */
    void takeOn(Stage stage);
}
