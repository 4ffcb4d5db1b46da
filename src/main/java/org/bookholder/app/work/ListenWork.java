package org.bookholder.app.work;

import java.nio.file.Path;
import java.util.List;
import org.bookholder.app.jobs.Job;
import org.bookholder.app.jobs.JobResult;
import org.bookholder.problem.ProblemException;

/**
 * Listens again to takes of a session that were broken off, and takes in what was kept in a second place.
 *
 * @param place where it is done
 */
record ListenWork(WorkPlace place) {
    Job job(Path session) {
        return new Job(
                "repair",
                "Listening again",
                Names.ofSession(session, place.here()),
                true,
                "the take that was being listened to stays as it was",
                control -> {
                    if (!place.settle(session, control)) {
                        throw new ProblemException(
                                "not all that was recorded is in the notes yet",
                                session.toString(),
                                "close the session where it is open, then have it repaired");
                    }
                    return new JobResult(
                            "What was recorded before it was broken off is in the notes.",
                            List.of(),
                            place.link(session, "Hear and decide"));
                });
    }
}
