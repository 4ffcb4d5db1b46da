package org.bookholder.runtime.stage;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;

/**
 * A crew without threads: stages take a step each in turn when told to, in the order in which they were taken on.
 * Confined to one thread. With it a whole session runs in virtual time and comes out the same every time.
 */
public final class ManualScheduler implements Crew {
    private final List<Stage> stages = new ArrayList<>();
    private final List<Stage> fresh = new ArrayList<>();
    private final BiConsumer<Stage, Throwable> onFailure;

    /** Creates a crew that has nothing to do; {@code onFailure} is told of each stage's failure. */
    public ManualScheduler(BiConsumer<Stage, Throwable> onFailure) {
        this.onFailure = onFailure;
    }

    @Override
    public void takeOn(Stage stage) {
        fresh.add(stage);
    }

    /** Lets each stage take one step; returns how much was done in all, 0 if all were idle. */
    public int step() {
        int done = 0;
        for (Stage stage : List.copyOf(fresh)) {
            fresh.remove(stage);
            stages.add(stage);
            done += 1 + attempt(stage, this::start);
        }
        for (Stage stage : List.copyOf(stages)) {
            done += attempt(stage, Stage::doWork);
        }
        return done;
    }

    /** Steps until all stages are idle; throws if that is not so after {@code limit} rounds. */
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
        return stages.stream().map(Stage::role).toList();
    }

    /** Ends all stages where they stand. */
    public void stop() {
        List.copyOf(stages).forEach(this::end);
    }

    private int start(Stage stage) throws Exception {
        stage.onStart();
        return 0;
    }

    private int attempt(Stage stage, Step step) {
        try {
            int done = step.of(stage);
            if (done >= 0) {
                return done;
            }
        } catch (Exception failure) {
            onFailure.accept(stage, failure);
        }
        end(stage);
        return 1;
    }

    private void end(Stage stage) {
        stages.remove(stage);
        try {
            stage.onClose();
        } catch (Exception failure) {
            onFailure.accept(stage, failure);
        }
    }

    private interface Step {
        int of(Stage stage) throws Exception;
    }
}
