package org.bookholder.cli;

import java.nio.file.Path;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.bookholder.app.course.LessonVersions;
import org.bookholder.app.environment.Environment;
import org.bookholder.course.page.HistoryPage;
import org.bookholder.course.versions.HistoryJson;
import org.bookholder.course.versions.HistoryText;
import org.bookholder.course.versions.LessonHistory;
import org.bookholder.problem.ProblemException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Shows what became of a lesson. */
@Command(
        name = "versions",
        sortOptions = false,
        description = {
            "Show the versions of a lesson: its texts, recordings, edits and films, and what changed in between.",
            "Nothing is kept for this: texts are those that were read, films are the files that are there."
        })
final class VersionsCommand implements Callable<Integer> {
    private final Environment here;
    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "SCRIPT", description = "A lesson's script.")
    private @Nullable Path script;

    @Option(names = "--json", description = "The same as JSON, for other programs.")
    private boolean json;

    @Option(names = "--page", paramLabel = "FILE.html", description = "Also write it as a page to print.")
    private @Nullable Path page;

    VersionsCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        LessonHistory history = LessonVersions.of(Objects.requireNonNull(script), here);
        if (page != null) {
            TextFile.write(page, "the page", HistoryPage.of(history, here.zone()));
        }
        if (json) {
            terminal.out().println(HistoryJson.of(history).toPrettyString());
        } else {
            HistoryText.of(history, here.zone()).forEach(terminal.out()::println);
        }
        return 0;
    }
}
