package org.bookholder.runtime.stage;

import org.jspecify.annotations.Nullable;

/** Runs slow tasks one after another, for callers that must not block. Safe for use by several threads. */
public final class BackgroundTasks implements Stage {
    private final Mailbox<Runnable> asked = new Mailbox<>(64);

    /** Queues a task; returns at once. The task reports its own failures. */
    public void ask(Runnable errand) {
        asked.add(errand);
    }

    @Override
    public String role() {
        return "errands";
    }

    @Override
    public Criticality criticality() {
        return Criticality.RESTARTABLE;
    }

    @Override
    public int doWork() {
        @Nullable Runnable next = asked.poll();
        if (next == null) {
            return 0;
        }
        next.run();
        return 1;
    }
}
