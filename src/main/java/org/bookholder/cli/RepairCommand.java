package org.bookholder.cli;

import java.nio.file.Path;
import java.util.Objects;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.SessionRepairs;
import org.bookholder.journal.SessionRepair.Report;
import org.bookholder.problem.ProblemException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Repairs a session that is damaged. */
@Command(
        name = "repair",
        description = {
            "Repair a session whose files are damaged: save every note that can still be read, put the headers of "
                    + "recordings back, and listen again to what is missing.",
            "The files as they were are kept in a folder inside the session. A session without damage stays as it is."
        })
final class RepairCommand implements Callable<Integer> {
    private final Environment here;
    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "SESSION", description = "The session's folder.")
    private @Nullable Path session;

    RepairCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        Path place = Objects.requireNonNull(session);
        Report report = SessionRepairs.repair(here, place);
        print(report, place);
        return new Recovery(here, terminal).settle(place);
    }

    private void print(Report report, Path place) {
        if (report.copies().isEmpty()) {
            terminal.out().println("Nothing had to be repaired in " + place + ".");
        } else {
            terminal.out().println("The files as they were: " + report.copies().get());
            terminal.out().println("Saved: " + entries(report.saved()) + " in the notes.");
        }
        if (report.gone() > 0) {
            terminal.out().println("Gone:  " + entries(report.gone()) + ", as far as can be told.");
        }
        if (report.scriptCopied()) {
            terminal.out().println("The script is that of the copy in the session's folder.");
        }
        if (!report.takesPutBack().isEmpty()) {
            String takes = report.takesPutBack().stream().map(String::valueOf).collect(Collectors.joining(", "));
            terminal.out().println("The notes had lost where these takes begin; it was worked out again: " + takes);
        }
        report.headers().forEach(file -> terminal.out().println("The header was written again: " + file.getFileName()));
        report.lost().forEach(what -> terminal.out().println("Not saved: " + what));
    }

    private static String entries(long count) {
        return count == 1 ? "1 entry" : count + " entries";
    }
}
