package org.bookholder.app.work;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.bookholder.app.delivery.DeliveryProfiles;
import org.bookholder.app.delivery.ExportCheckService;
import org.bookholder.app.delivery.ExportJob;
import org.bookholder.app.delivery.FilmTextFiles;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Progress;
import org.bookholder.app.jobs.Job;
import org.bookholder.app.jobs.JobControl;
import org.bookholder.app.jobs.JobResult;
import org.bookholder.app.jobs.JobResult.Row;
import org.bookholder.app.reading.OptionalEars;
import org.bookholder.delivery.CheckReport;
import org.bookholder.delivery.CheckText;
import org.bookholder.delivery.Finding;
import org.bookholder.delivery.Finding.Grade;
import org.bookholder.handoff.captions.FilmTexts;
import org.bookholder.problem.ProblemException;

/**
 * Checks exported films.
 *
 * @param place where it is done
 */
record CheckWork(WorkPlace place) implements WorkList.Maker {
    @Override
    public Job job(WorkRequest request) throws ProblemException {
        List<Path> films = request.paths("files", "an exported film");
        Optional<Path> script = request.optionalPath("script");
        boolean words = !request.on("noWords");
        if (script.isPresent() && films.size() > 1) {
            throw new ProblemException("a script is for one film", "the form", "choose one film, or no script");
        }
        boolean captions = request.on("captions");
        if (captions && !words) {
            throw new ProblemException("captions need the words", "the form", "let the words be checked too");
        }
        ExportJob.Choices choices = new ExportJob.Choices(
                request.optionalPath("profile"),
                DeliveryProfiles.usual(place.here()),
                words ? script : Optional.empty(),
                words);
        List<ExportJob> jobs = new ArrayList<>();
        for (Path film : films) {
            jobs.add(ExportJob.of(film, choices, place.here()));
        }
        return new Job(
                "check",
                "Check",
                Names.of(films),
                true,
                "the film that was being checked has no new result",
                control -> check(jobs, captions, control));
    }

    private JobResult check(List<ExportJob> jobs, boolean captions, JobControl control) throws ProblemException {
        Environment here = place.held(control);
        boolean words = jobs.stream().anyMatch(job -> job.lesson().isPresent());
        List<Row> rows = new ArrayList<>();
        List<CheckReport> reports = new ArrayList<>();
        try (OptionalEars ears = OptionalEars.load(here, here.model(), words)) {
            for (int i = 0; i < jobs.size(); i++) {
                int before = i;
                ExportJob job = jobs.get(i);
                try {
                    List<FilmTexts> heard = new ArrayList<>();
                    CheckReport report = new ExportCheckService(
                                    here,
                                    progress -> control.reached(of(progress, before, jobs.size())),
                                    control.stop())
                            .check(job, ears.ears(), heard::add);
                    reports.add(report);
                    ExportCheckService.keep(job, report).ifPresent(why -> rows.add(Row.warning(why)));
                    rows.addAll(rows(report));
                    if (captions) {
                        rows.add(written(job, heard));
                    }
                } catch (ProblemException e) {
                    // The other films are still checked.
                    rows.add(new Row("failed", Names.of(job.film()), e.what(), e.remedy()));
                }
            }
        }
        return new JobResult(said(jobs.size(), reports), rows, List.of());
    }

    private static Row written(ExportJob job, List<FilmTexts> heard) throws ProblemException {
        if (heard.isEmpty()) {
            return Row.warning(job.film() + ": no line of a script was heard in it, so it has no captions");
        }
        List<Path> files = FilmTextFiles.write(job.film(), heard.get(0));
        return Row.line("Captions, transcript and chapters: " + files.get(0).getParent() + " ("
                + files.stream().map(Names::of).collect(Collectors.joining(", ")) + ")");
    }

    /** The progress of one film as progress of all; the time left is known for the last one only. */
    private static Progress of(Progress film, int before, int all) {
        return new Progress(
                film.what(),
                (before + film.done()) / all,
                before == all - 1 ? film.secondsLeft() : OptionalDouble.empty());
    }

    private static String said(int films, List<CheckReport> reports) {
        if (reports.size() == 1 && films == 1) {
            return reports.get(0).film().name() + ": " + CheckText.verdict(reports.get(0));
        }
        long toMend =
                reports.stream().filter(report -> report.count(Grade.MEND) > 0).count();
        String checked = reports.size() + " of " + films + (films == 1 ? " film checked" : " films checked");
        return checked
                + (toMend == 0 && reports.size() < films
                        ? ""
                        : toMend == 0 ? ", nothing to mend" : ", " + toMend + " with something to mend");
    }

    private static List<Row> rows(CheckReport report) {
        List<Row> rows = new ArrayList<>();
        rows.add(new Row(
                "",
                report.film().name(),
                CheckText.verdict(report),
                String.join("; ", CheckText.facts(report)) + "; limits from the profile: " + report.profile()));
        for (Finding finding : report.findings()) {
            rows.add(new Row(
                    CheckText.of(finding.grade()),
                    CheckText.time(finding),
                    finding.kind() + ": " + finding.what(),
                    finding.remedy()));
        }
        return rows;
    }
}
