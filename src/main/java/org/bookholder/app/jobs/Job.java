package org.bookholder.app.jobs;

import org.bookholder.problem.ProblemException;

/**
 * Long work to be done in the background.
 *
 * @param kind the name of the command that does the same
 * @param title what is done, for people: "Check"
 * @param on what it is done to, for people: the name of a file or a lesson
 * @param listens whether it follows speech or compares sound, which takes the processor from a reading that goes on
 * @param ifStopped what becomes of it if it is stopped, one clause: "nothing was packed"
 * @param work does it
 */
public record Job(String kind, String title, String on, boolean listens, String ifStopped, Work work) {
    /** Does the work. */
    @FunctionalInterface
    public interface Work {
        /**
         * Does it, on the caller's thread.
         *
         * @throws ProblemException if something stands in the way
         * @throws org.bookholder.app.environment.OperationInterrupted if it was stopped before it came to anything
         */
        JobResult run(JobControl control) throws ProblemException;
    }
}
