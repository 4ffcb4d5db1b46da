package org.bookholder.app.work;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.app.footage.FileMatch;
import org.bookholder.app.footage.FootageMatching;
import org.bookholder.app.footage.MatchText;
import org.bookholder.app.jobs.Job;
import org.bookholder.app.jobs.JobControl;
import org.bookholder.app.jobs.JobResult;
import org.bookholder.app.jobs.JobResult.Link;
import org.bookholder.app.jobs.JobResult.Row;
import org.bookholder.problem.ProblemException;

/**
 * Finds where camera and recorder files lie in a session.
 *
 * @param place where it is done
 */
record MatchWork(WorkPlace place) implements WorkList.Maker {
    @Override
    public Job job(WorkRequest request) throws ProblemException {
        Path session = request.path("session", "a session");
        List<Path> files = request.paths("files", "a camera or recorder file");
        return new Job(
                "match",
                "Match",
                Names.of(files),
                true,
                "what was matched so far is not kept",
                control -> match(session, files, control));
    }

    private JobResult match(Path session, List<Path> files, JobControl control) throws ProblemException {
        List<Row> rows = new ArrayList<>();
        List<FileMatch> matches = new FootageMatching(place.here(), control::reached, control.stop())
                .match(session, files, match -> {
                    List<Row> own = rows(match);
                    rows.addAll(own);
                    own.forEach(row -> control.say(row.where() + ": " + row.what()));
                });
        long found =
                matches.stream().filter(match -> match.placed().isPresent()).count();
        if (found > 0) {
            rows.addAll(SourceRows.of(session, place.here()));
        }
        List<Link> links = new ArrayList<>(place.link(session, "Hear and decide"));
        links.add(new Link("Write the hand-off", "?view=handoff", Link.Kind.PAGE));
        return new JobResult(
                found + " of " + files.size() + (files.size() == 1 ? " file" : " files") + " matched", rows, links);
    }

    private static List<Row> rows(FileMatch match) {
        List<Row> rows = new ArrayList<>();
        String name = Names.of(match.file());
        match.placed().ifPresent(placed -> {
            MatchText.of(placed).forEach(line -> rows.add(new Row("", name, line, "")));
            match.missed().forEach(missed -> rows.add(new Row("look", name, MatchText.of(missed), "")));
            MatchText.caution(placed.footage()).ifPresent(line -> rows.add(Row.warning(line)));
        });
        match.problem().ifPresent(problem -> rows.add(new Row("failed", name, problem.what(), problem.remedy())));
        return rows;
    }
}
