package org.bookholder.app.work;

import java.util.Map;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.jobs.Job;
import org.bookholder.problem.ProblemException;

/** The kinds of work that the page can ask for, each named as the command that does the same. */
public final class WorkList {
    private final Map<String, Maker> makers;

    /** Makes a job of what a form holds. */
    @FunctionalInterface
    interface Maker {
        /**
         * Makes the job, without beginning it.
         *
         * @throws ProblemException if something in the form is missing or not understood
         */
        Job job(WorkRequest request) throws ProblemException;
    }

    public WorkList(Environment here) {
        makers = Map.of("time", new TimeWork(here));
    }

    /**
     * The job of that kind.
     *
     * @return empty if there is no such kind
     * @throws ProblemException if something in the form is missing or not understood
     */
    public Optional<Job> job(String kind, WorkRequest request) throws ProblemException {
        Maker maker = makers.get(kind);
        return maker == null ? Optional.empty() : Optional.of(maker.job(request));
    }
}
