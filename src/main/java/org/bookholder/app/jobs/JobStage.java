package org.bookholder.app.jobs;

import org.bookholder.runtime.stage.Criticality;
import org.bookholder.runtime.stage.Stage;

/**
 * Does jobs one after another; a step is a whole job, which is stopped by {@link Jobs#stopAll}.
 *
 * @param jobs where they come from
 * @param listening whether it does those that listen
 */
record JobStage(Jobs jobs, boolean listening) implements Stage {
    @Override
    public String role() {
        return listening ? "listening jobs" : "jobs";
    }

    @Override
    public Criticality criticality() {
        return Criticality.RESTARTABLE;
    }

    @Override
    public int doWork() {
        return jobs.work(listening) ? 1 : 0;
    }
}
