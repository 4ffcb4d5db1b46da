package org.bookholder.app.work;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.jobs.Job;
import org.bookholder.app.jobs.JobResult;
import org.bookholder.app.jobs.JobResult.Link;
import org.bookholder.app.jobs.JobResult.Row;
import org.bookholder.app.session.SessionUnpacking;
import org.bookholder.problem.ProblemException;

/**
 * Unpacks sessions to where the others lie.
 *
 * @param place where it is done
 */
record UnpackWork(WorkPlace place) implements WorkList.Maker {
    @Override
    public Job job(WorkRequest request) throws ProblemException {
        List<Path> archives = request.paths("files", "a packed session");
        return new Job("unpack", "Unpack", Names.of(archives), false, "nothing was unpacked", control -> {
            List<Row> rows = new ArrayList<>();
            List<Link> links = new ArrayList<>();
            for (Path archive : archives) {
                Path session = new SessionUnpacking(place.here(), control::reached, control.stop())
                        .unpack(archive, Optional.empty());
                rows.add(Row.line("Session: " + session));
                links.addAll(place.link(session, "Hear and decide"));
            }
            return new JobResult(
                    archives.size() == 1 ? "The session is unpacked." : archives.size() + " sessions are unpacked.",
                    rows,
                    links);
        });
    }
}
