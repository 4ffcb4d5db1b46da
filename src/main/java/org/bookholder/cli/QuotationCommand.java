package org.bookholder.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.bookholder.app.course.CourseOverview;
import org.bookholder.app.course.CoursePapers;
import org.bookholder.app.environment.Environment;
import org.bookholder.course.offer.Quotation;
import org.bookholder.course.offer.QuotationText;
import org.bookholder.course.page.QuotationPage;
import org.bookholder.problem.ProblemException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Works out hours and a price for a course that is made for somebody else. */
@Command(
        name = "quotation",
        sortOptions = false,
        description = {
            "Show hours and a price for making a course for somebody else, by the plan's own figures.",
            "Your rate, the client and expenses come from quotation: in course.yaml. No legal or tax advice."
        })
final class QuotationCommand implements Callable<Integer> {
    private final Environment here;
    private final Terminal terminal;

    @Mixin
    private final CourseFolder folder = new CourseFolder();

    @Option(names = "--page", paramLabel = "FILE.html", description = "Also write it as a page to print.")
    private @Nullable Path page;

    QuotationCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        CourseOverview course = CourseOverview.read(folder.path(), here);
        terminal.leftOut(course.status().unreadable());
        CoursePapers papers = new CoursePapers(here, course);
        Quotation quotation = papers.quotation();
        if (page != null) {
            TextFile.write(page, "the page", QuotationPage.of(papers.title(), papers.today(), quotation));
        }
        QuotationText.of(papers.title(), quotation).forEach(terminal.out()::println);
        return 0;
    }
}
