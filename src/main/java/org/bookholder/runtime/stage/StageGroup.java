package org.bookholder.runtime.stage;

import java.util.concurrent.atomic.AtomicInteger;

/**
 * A group of stages, none of them restartable. When the last one has ended, for whatever reason, an action runs on its
 * thread.
 */
public final class StageGroup {
    private final AtomicInteger running;
    private final Runnable afterLast;

    /**
     * Creates the group.
     *
     * @param size number of stages, 1 or more; each must be passed to {@link #member} once
     * @param afterLast the action after the last one has ended
     */
    public StageGroup(int size, Runnable afterLast) {
        this.running = new AtomicInteger(size);
        this.afterLast = afterLast;
    }

    /** Wraps a stage as a member of the group. */
    public Stage member(Stage stage) {
        return new Member(stage);
    }

    private final class Member implements Stage {
        private final Stage stage;

        Member(Stage stage) {
            this.stage = stage;
        }

        @Override
        public String role() {
            return stage.role();
        }

        @Override
        public Criticality criticality() {
            return stage.criticality();
        }

        @Override
        public void onStart() throws Exception {
            stage.onStart();
        }

        @Override
        public int doWork() throws Exception {
            return stage.doWork();
        }

        @Override
        public void onClose() throws Exception {
            try {
                stage.onClose();
            } finally {
                if (running.decrementAndGet() == 0) {
                    afterLast.run();
                }
            }
        }
    }
}
