package org.bookholder.app.work;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.bookholder.app.jobs.Job;
import org.bookholder.app.jobs.JobResult;
import org.bookholder.app.jobs.JobResult.Link;
import org.bookholder.app.jobs.JobResult.Row;
import org.bookholder.app.session.SessionPacking;
import org.bookholder.problem.ProblemException;

/**
 * Packs a session into one file.
 *
 * @param place where it is done
 */
record PackWork(WorkPlace place) implements WorkList.Maker {
    @Override
    public Job job(WorkRequest request) throws ProblemException {
        Path session = request.path("session", "a session");
        Path folder = request.path("out", "a folder");
        return new Job("pack", "Pack", Names.of(session), true, "nothing was packed", control -> {
            place.settle(session, control);
            place.letGo().accept(session);
            Path archive = unused(folder, Names.of(session));
            SessionPacking.Packed packed =
                    new SessionPacking(place.here(), control::reached, control.stop()).pack(session, archive, false);
            String size = String.format(Locale.ROOT, "%d files, %.1f MB", packed.files(), packed.bytes() / 1e6);
            return new JobResult(
                    "Packed: " + Names.of(archive) + " (" + size + ")",
                    List.of(Row.line("File: " + archive)),
                    List.of(new Link("Open the folder", folder.toString(), Link.Kind.FOLDER)));
        });
    }

    private static Path unused(Path folder, String name) {
        Path archive = folder.resolve(name + ".zip");
        for (int i = 2; Files.exists(archive); i++) {
            archive = folder.resolve(name + "-" + i + ".zip");
        }
        return archive;
    }
}
