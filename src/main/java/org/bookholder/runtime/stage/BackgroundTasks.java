package org.bookholder.runtime.stage;

import org.jspecify.annotations.Nullable;

/** Does what takes a while, one errand after another, for those who may not wait. Safe for use by several threads. */
public final class BackgroundTasks implements Stage {
    private final Mailbox<Runnable> asked = new Mailbox<>(64);

    /** Asks for something; returns at once. What goes wrong in it is its own to tell. */
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
