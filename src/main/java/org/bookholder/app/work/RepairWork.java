package org.bookholder.app.work;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.jobs.Job;
import org.bookholder.app.jobs.JobResult;
import org.bookholder.app.jobs.JobResult.Row;
import org.bookholder.app.session.RepairText;
import org.bookholder.app.session.SessionRepairs;
import org.bookholder.problem.ProblemException;

/**
 * Repairs a session.
 *
 * @param place where it is done
 */
record RepairWork(WorkPlace place) implements WorkList.Maker {
    @Override
    public Job job(WorkRequest request) throws ProblemException {
        Path session = request.path("session", "a session");
        return new Job(
                "repair",
                "Repair",
                Names.of(session),
                true,
                "the take that was being listened to stays as it was",
                control -> {
                    place.letGo().accept(session);
                    List<Row> rows = RepairText.of(
                                    SessionRepairs.repairAndTakeIn(place.here(), session, Optional.empty()),
                                    Names.of(session))
                            .stream()
                            .map(Row::line)
                            .toList();
                    place.settle(session, control);
                    return new JobResult(
                            "The session is looked through.", rows, place.link(session, "Hear and decide"));
                });
    }
}
