package org.bookholder.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.bookholder.app.course.CourseOverview;
import org.bookholder.app.course.CoursePapers;
import org.bookholder.app.environment.Environment;
import org.bookholder.course.offer.CourseSummary;
import org.bookholder.course.offer.SummaryText;
import org.bookholder.course.page.SummaryPage;
import org.bookholder.problem.ProblemException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Tells somebody else how far a course is. */
@Command(
        name = "summary",
        sortOptions = false,
        description = {
            "Show how far a course is, for a client or partner who only wants to know that.",
            "It holds no costs, no file names and no dates to come. It is only shown and written, never sent."
        })
final class SummaryCommand implements Callable<Integer> {
    private final Environment here;
    private final Terminal terminal;

    @Mixin
    private final CourseFolder folder = new CourseFolder();

    @Option(names = "--words", paramLabel = "TEXT", description = "Your own words, which come first.")
    private String words = "";

    @Option(names = "--page", paramLabel = "FILE.html", description = "Also write it as a page to print or send.")
    private @Nullable Path page;

    SummaryCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        CourseOverview course = CourseOverview.read(folder.path(), here);
        terminal.leftOut(course.status().unreadable());
        CourseSummary summary = new CoursePapers(here, course).summary();
        if (page != null) {
            TextFile.write(page, "the page", SummaryPage.of(summary, words));
        }
        SummaryText.of(summary, words).forEach(terminal.out()::println);
        return 0;
    }
}
