package org.bookholder.runtime.stage;

import java.util.concurrent.atomic.AtomicInteger;

/** Stages, none of them restartable, of which the last one to end, for whatever reason, does something more on its thread. */
public final class StageGroup {
    private final AtomicInteger running;
    private final Runnable afterLast;

    /**
     * Creates the group.
     *
     * @param size how many stages it has, 1 or more; each is to be given to {@link #member} once
     * @param afterLast what the last one does when it has ended
     */
    public StageGroup(int size, Runnable afterLast) {
        this.running = new AtomicInteger(size);
        this.afterLast = afterLast;
    }

    /** The stage as a member of the group. */
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
