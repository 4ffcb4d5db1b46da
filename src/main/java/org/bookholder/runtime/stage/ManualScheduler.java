package org.bookholder.runtime.stage;

import java.util.ArrayList;
import java.util.List;
import java.util.function.LongSupplier;

/**
 * A crew without threads: on request each stage runs one step, in the order in which the stages were added. Confined to
 * one thread. With it a whole session runs in virtual time and gives the same result every time.
 */
public final class ManualScheduler implements Crew {
    private final List<SupervisedStage> stages = new ArrayList<>();
    private final LongSupplier nanoTime;
    private final FaultListener faults;

    /**
     * Creates a crew without stages.
     *
     * @param nanoTime the virtual time, in nanoseconds
     * @param faults receives each fault of a stage
     */
    public ManualScheduler(LongSupplier nanoTime, FaultListener faults) {
        this.nanoTime = nanoTime;
        this.faults = faults;
    }

    @Override
    public void takeOn(Stage stage) {
        stages.add(new SupervisedStage(stage, nanoTime, faults));
    }

    /** Runs one step of each stage; returns the total amount of work, 0 if all were idle. */
    public int step() {
        int done = 0;
        for (SupervisedStage stage : List.copyOf(stages)) {
            int steps = stage.step();
            done += Math.abs(steps);
            if (steps < 0) {
                stages.remove(stage);
            }
        }
        return done;
    }

    /** Runs steps until all stages are idle; throws if they are not after {@code limit} rounds. */
    public void runUntilIdle(int limit) {
        for (int i = 0; i < limit; i++) {
            if (step() == 0) {
                return;
            }
        }
        throw new IllegalStateException("still busy after " + limit + " rounds: " + roles());
    }

    /** The roles of the stages that have not ended. */
    public List<String> roles() {
        return stages.stream().map(SupervisedStage::role).toList();
    }

    /** Ends all stages at once. */
    public void stop() {
        for (SupervisedStage stage : List.copyOf(stages)) {
            stages.remove(stage);
            stage.close();
        }
    }
}
