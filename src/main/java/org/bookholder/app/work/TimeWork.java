package org.bookholder.app.work;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bookholder.app.course.RunningTimes;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.jobs.Job;
import org.bookholder.app.jobs.JobResult;
import org.bookholder.app.jobs.JobResult.Row;
import org.bookholder.course.Text;
import org.bookholder.course.prepare.LessonTime;
import org.bookholder.course.prepare.TimeText;
import org.bookholder.problem.ProblemException;

/**
 * How long a lesson or a course will run.
 *
 * @param here the machine
 */
record TimeWork(Environment here) implements WorkList.Maker {
    @Override
    public Job job(WorkRequest request) throws ProblemException {
        Path place = request.path("place", "a lesson or a course");
        return new Job("time", "Running time", Names.of(place), true, "nothing was changed", control -> {
            RunningTimes times = RunningTimes.of(place, here);
            control.stop().check();
            List<Row> rows = new ArrayList<>();
            times.unreadable().forEach(why -> rows.add(Row.warning("Left out: " + why)));
            times.lessons().forEach(lesson -> rows.add(row(lesson)));
            TimeText.remarks(times.lessons(), times.measured(), times.wordsChecked()).stream()
                    .filter(line -> !line.isEmpty())
                    .forEach(line -> rows.add(Row.line(line)));
            return new JobResult("Running times at the target pace and at your own.", rows, List.of());
        });
    }

    private static Row row(LessonTime lesson) {
        String own = lesson.ownSeconds().isPresent()
                ? ", yours " + Text.clock(lesson.ownSeconds().getAsDouble())
                : "";
        String figures = String.format(
                Locale.ROOT,
                "%d words at %d a minute%s%s",
                lesson.words(),
                lesson.targetPace(),
                own,
                lesson.readability()
                        .map(text -> String.format(Locale.ROOT, "; grade %.1f", text.grade()))
                        .orElse(""));
        return new Row("", Text.clock(lesson.seconds()), lesson.number() + " · " + lesson.title(), figures);
    }
}
