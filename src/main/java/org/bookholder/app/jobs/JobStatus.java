package org.bookholder.app.jobs;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.environment.Progress;

/**
 * How a job stands.
 *
 * @param id its number, from 1
 * @param job the job
 * @param step how far it has come
 * @param held whether it waits for the end of a reading
 * @param progress the last progress that it has told; empty if none yet
 * @param said what it has told so far, one line each
 * @param result what came of it; empty before its end, and if nothing did
 * @param problem why it failed, for people; empty if it did not
 */
public record JobStatus(
        int id,
        Job job,
        Step step,
        boolean held,
        Optional<Progress> progress,
        List<String> said,
        Optional<JobResult> result,
        String problem) {
    /** More lines than anyone reads: the first ones go. */
    private static final int MOST_LINES = 200;

    /** How far a job has come. */
    public enum Step {
        WAITING,
        RUNNING,
        STOPPING,
        DONE,
        STOPPED,
        FAILED
    }

    static JobStatus waiting(int id, Job job) {
        return new JobStatus(id, job, Step.WAITING, false, Optional.empty(), List.of(), Optional.empty(), "");
    }

    /** Whether it has not ended. */
    public boolean goesOn() {
        return step == Step.WAITING || step == Step.RUNNING || step == Step.STOPPING;
    }

    JobStatus at(Step next) {
        return new JobStatus(id, job, next, held, progress, said, result, problem);
    }

    JobStatus held(boolean now) {
        return new JobStatus(id, job, step, now, progress, said, result, problem);
    }

    JobStatus reached(Progress now) {
        return new JobStatus(id, job, step, held, Optional.of(now), said, result, problem);
    }

    JobStatus saying(String line) {
        List<String> all = new ArrayList<>(said);
        all.add(line);
        List<String> last = all.subList(Math.max(0, all.size() - MOST_LINES), all.size());
        return new JobStatus(id, job, step, held, progress, List.copyOf(last), result, problem);
    }

    JobStatus ended(Step end, Optional<JobResult> came, String why) {
        return new JobStatus(id, job, end, false, progress, said, came, why);
    }
}
