package org.bookholder.app.work;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.bookholder.app.course.LessonPlace;
import org.bookholder.app.film.FilmObstacle;
import org.bookholder.app.film.FilmObstacle.Told;
import org.bookholder.app.film.FilmRequest;
import org.bookholder.app.film.FilmResult;
import org.bookholder.app.film.FilmService;
import org.bookholder.app.film.FilmText;
import org.bookholder.app.jobs.Job;
import org.bookholder.app.jobs.JobControl;
import org.bookholder.app.jobs.JobResult;
import org.bookholder.app.jobs.JobResult.Link;
import org.bookholder.app.jobs.JobResult.Row;
import org.bookholder.delivery.CheckText;
import org.bookholder.delivery.Finding;
import org.bookholder.film.plan.FilmPlanner;
import org.bookholder.problem.ProblemException;

/**
 * Makes the film of a session.
 *
 * @param place where it is done
 */
record FilmWork(WorkPlace place) implements WorkList.Maker {
    @Override
    public Job job(WorkRequest request) throws ProblemException {
        Path session = request.path("session", "a session");
        FilmRequest film = new FilmRequest(
                session,
                Optional.empty(),
                !request.on("final"),
                lines(request.text("leaveOut").orElse("")),
                !request.on("asShot"),
                request.on("enlarge"),
                request.optionalPath("profile"),
                true,
                request.on("anew"),
                new FilmPlanner.Wishes(request.on("title"), request.on("cameras")));
        return new Job(
                "film", film.draft() ? "Draft" : "Film", Names.of(session), true, "no film was made", control -> {
                    for (Path each : LessonPlace.of(session, place.here()).sessions()) {
                        place.settle(each, control);
                        if (!film.leaveOut().isEmpty()) {
                            // That is written into the session.
                            place.letGo().accept(each);
                        }
                    }
                    return make(session, film, control);
                });
    }

    private static Set<Integer> lines(String text) throws ProblemException {
        Set<Integer> lines = new LinkedHashSet<>();
        for (String each : text.strip().split("[,\\s]+", -1)) {
            if (!each.isEmpty() && !each.matches("\\d{1,6}")) {
                throw new ProblemException(
                        "'" + each + "' is not the number of a line",
                        "the form",
                        "write numbers with commas between them");
            }
            if (!each.isEmpty()) {
                lines.add(Integer.parseInt(each));
            }
        }
        return lines;
    }

    private static String told(FilmObstacle obstacle) {
        return obstacle.ofDraft(Told.PAGE).told();
    }

    private JobResult make(Path session, FilmRequest film, JobControl control) throws ProblemException {
        FilmResult result = new FilmService(place.held(control), film, control::reached, control.stop())
                .make(Told.PAGE, obstacle -> control.say("In the way of the finished film: " + told(obstacle)));
        List<Row> rows = new ArrayList<>();
        result.obstacles()
                .forEach(obstacle -> rows.add(Row.line("In the way of the finished film: " + told(obstacle))));
        FilmText.of(result).forEach(line -> rows.add(Row.line(line)));
        result.check().ifPresent(report -> {
            for (Finding finding : report.findings()) {
                rows.add(new Row(
                        CheckText.of(finding.grade()), "", finding.kind() + ": " + finding.what(), finding.remedy()));
            }
        });
        rows.add(Row.line("File: " + result.made().file()));
        List<Link> links = new ArrayList<>(place.link(session, "Hear and decide"));
        Path folder = Optional.ofNullable(result.made().file().getParent()).orElse(session);
        links.add(new Link("Open the folder", folder.toString(), Link.Kind.FOLDER));
        return new JobResult(FilmText.said(result), rows, links);
    }
}
