package org.bookholder.app.jobs;

import org.bookholder.app.environment.Interruption;
import org.bookholder.app.environment.Progress;

/** How a job is stopped and tells how far it has come. */
public interface JobControl {
    /**
     * Stops the job between two of its steps. Asking it waits while the job is held, as one that listens is while a lesson
     * is being read.
     */
    Interruption stop();

    /** Waits while the job is held: for its other threads. Returns at once if it is to be stopped. */
    void hold();

    /** Tells how far it has come. */
    void reached(Progress progress);

    /** Tells something that a person should know, one line. */
    void say(String line);
}
