package org.bookholder.app.work;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.footage.FootageLogRequest;
import org.bookholder.app.footage.FootageLogging;
import org.bookholder.app.handoff.HandOffRequest;
import org.bookholder.app.jobs.Job;
import org.bookholder.app.jobs.JobControl;
import org.bookholder.app.jobs.JobResult;
import org.bookholder.app.jobs.JobResult.Row;
import org.bookholder.app.reading.ReadingControl;
import org.bookholder.app.reading.ReadingResult;
import org.bookholder.handoff.PickupListExporter;
import org.bookholder.problem.ProblemException;

/**
 * Turns a finished shoot into a session and a hand-off.
 *
 * @param place where it is done
 */
record LogWork(WorkPlace place) implements WorkList.Maker {
    @Override
    public Job job(WorkRequest request) throws ProblemException {
        FootageLogRequest shoot = new FootageLogRequest(
                request.path("script", "the lesson"),
                request.paths("files", "a camera or recorder file"),
                Optional.empty(),
                place.here().model());
        HandOffRequest handOff = new HandOffWork(place).choices(request);
        return new Job("log", "Log", Names.of(shoot.files()), true, "nothing was followed", control -> {
            LogProgress progress = new LogProgress(place.here(), shoot.files().size(), control);
            Environment here = place.held(control);
            Path session = new FootageLogging(here, progress, control(control)).log(shoot);
            List<Row> rows = new ArrayList<>();
            for (ReadingResult result : progress.results()) {
                result.fault()
                        .ifPresent(fault -> rows.add(
                                Row.warning("a fault of the program ended a take; " + result.log() + " says more")));
            }
            List<Row> list = lines(progress.results());
            if (control.stop().requested()) {
                rows.addAll(list);
                return new JobResult("What was followed so far is kept.", rows, place.link(session, "Hear and decide"));
            }
            JobResult written = new HandOffWork(place).write(session, handOff, control);
            rows.addAll(written.rows());
            rows.addAll(list);
            return new JobResult(written.said(), rows, written.links());
        });
    }

    /** The list of pickups as the terminal prints it; the last take knows of those before it. */
    private List<Row> lines(List<ReadingResult> results) {
        if (results.isEmpty()) {
            return List.of();
        }
        StringBuilder text = new StringBuilder();
        try {
            new PickupListExporter(place.here().zone())
                    .write(results.get(results.size() - 1).state(), List.of(), text);
        } catch (IOException e) {
            throw new IllegalStateException("text in memory must be writable", e);
        }
        return text.toString()
                .lines()
                .filter(line -> !line.isBlank())
                .map(Row::line)
                .toList();
    }

    private static ReadingControl control(JobControl control) {
        return new ReadingControl() {
            @Override
            public boolean interrupted() {
                return control.stop().requested();
            }

            @Override
            public boolean finishRequested() {
                return false;
            }
        };
    }
}
