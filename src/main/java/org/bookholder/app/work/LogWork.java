package org.bookholder.app.work;

import java.nio.file.Path;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.bookholder.app.course.LessonPlace;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.footage.FootageLogRequest;
import org.bookholder.app.footage.FootageLogging;
import org.bookholder.app.footage.MatchText;
import org.bookholder.app.handoff.HandOffRequest;
import org.bookholder.app.jobs.Job;
import org.bookholder.app.jobs.JobControl;
import org.bookholder.app.jobs.JobResult;
import org.bookholder.app.jobs.JobResult.Row;
import org.bookholder.app.reading.ReadingControl;
import org.bookholder.app.reading.ReadingResult;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionState;
import org.bookholder.wording.Labels;
import org.bookholder.wording.Pickup;
import org.bookholder.wording.Pickups;

/**
 * Turns a finished shoot into a session and a hand-off.
 *
 * @param place where it is done
 */
record LogWork(WorkPlace place) implements WorkList.Maker {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);

    @Override
    public Job job(WorkRequest request) throws ProblemException {
        FootageLogRequest shoot = new FootageLogRequest(
                request.path("script", "the lesson"),
                request.paths("files", "a camera or recorder file"),
                FootageLogRequest.Join.of(request.on("apart"), request.on("byNumbers")),
                Optional.empty(),
                place.here().model());
        HandOffRequest handOff = new HandOffWork(place).choices(request);
        return new Job("log", "Log", Names.of(shoot.files()), true, "nothing was followed", control -> {
            LogProgress progress = new LogProgress(place.here(), shoot.files().size(), control);
            Environment here = place.held(control);
            Path session = new FootageLogging(here, progress, control(control)).log(shoot);
            List<Row> rows = new ArrayList<>();
            progress.apart().forEach(said -> rows.add(Row.line(said)));
            progress.joined().forEach(recording -> rows.add(Row.line(MatchText.joined(recording))));
            for (ReadingResult result : progress.results()) {
                result.fault()
                        .ifPresent(fault -> rows.add(
                                Row.warning("a fault of the program ended a take; " + result.log() + " says more")));
            }
            rows.addAll(SourceRows.of(session, here));
            List<Row> list = pickups(progress.results());
            if (control.stop().requested()) {
                rows.addAll(list);
                return new JobResult("What was followed so far is kept.", rows, place.link(session, "Hear and decide"));
            }
            JobResult written = new HandOffWork(place).write(LessonPlace.ofSession(session), handOff, control);
            rows.addAll(written.rows());
            rows.addAll(list);
            return new JobResult(written.said(), rows, written.links());
        });
    }

    /** The lines to pick up; the last take knows of those before it. */
    private List<Row> pickups(List<ReadingResult> results) {
        if (results.isEmpty()) {
            return List.of();
        }
        SessionState state = results.get(results.size() - 1).state();
        List<Row> rows = new ArrayList<>();
        for (Pickup pickup : Pickups.of(state)) {
            String said = pickup.said().isEmpty() ? "" : pickup.said() + "; ";
            String where = pickup.where()
                    .map(at -> "take " + at.take() + ", "
                            + TIME.format(at.when().atZone(place.here().zone())))
                    .orElse("not tried");
            rows.add(new Row(
                    Labels.of(pickup.outcome()),
                    "line " + pickup.line(),
                    state.line(pickup.line()).text(),
                    said + where));
        }
        int lines = state.lines().count();
        rows.add(Row.line(rows.size() + " of " + lines + (lines == 1 ? " line" : " lines") + " to pick up"));
        return rows;
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
