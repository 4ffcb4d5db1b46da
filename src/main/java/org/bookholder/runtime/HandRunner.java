package org.bookholder.runtime;

import java.util.ArrayList;
import java.util.List;

/**
 * A crew without threads: stages take a step each in turn when told to, in the order in which they were taken on.
 * Confined to one thread. With it a whole session runs in virtual time and comes out the same every time.
 */
public final class HandRunner implements Crew, AutoCloseable {
    private final List<Stage> stages = new ArrayList<>();
    private final List<Stage> fresh = new ArrayList<>();

    @Override
    public void takeOn(Stage stage) {
        fresh.add(stage);
    }

    /** Lets each stage take one step; returns how much was done in all, 0 if all were idle. */
    public int step() throws Exception {
        int done = start();
        for (Stage stage : List.copyOf(stages)) {
            int result = stage.doWork();
            if (result < 0) {
                stages.remove(stage);
                stage.onClose();
                done++;
            } else {
                done += result;
            }
        }
        return done;
    }

    /** Steps until all stages are idle; throws if that is not so after {@code limit} rounds. */
    public void runUntilIdle(int limit) throws Exception {
        for (int i = 0; i < limit; i++) {
            if (step() == 0) {
                return;
            }
        }
        throw new IllegalStateException("still busy after " + limit + " rounds: " + roles());
    }

    /** The roles of the stages that have not ended. */
    public List<String> roles() {
        return stages.stream().map(Stage::role).toList();
    }

    @Override
    public void close() throws Exception {
        start();
        for (Stage stage : stages) {
            stage.onClose();
        }
        stages.clear();
    }

    private int start() throws Exception {
        int started = fresh.size();
        for (Stage stage : List.copyOf(fresh)) {
            stage.onStart();
            stages.add(stage);
        }
        fresh.clear();
        return started;
    }
}
