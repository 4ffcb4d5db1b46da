package org.bookholder.cli;

import java.nio.file.Path;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.bookholder.app.environment.Environment;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionSummary;
import org.bookholder.problem.ProblemException;
import org.bookholder.wording.Labels;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Lists sessions. */
@Command(
        name = "sessions",
        description = {
            "List the sessions that were kept, also those that were broken off.",
            "Go on with one by: bookholder read SCRIPT --session FOLDER"
        })
final class SessionsCommand implements Callable<Integer> {
    private static final DateTimeFormatter BEGAN = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

    private final Environment here;
    private final Terminal terminal;

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "FOLDER",
            description = "The folder that the sessions lie in. Default: where they go unless you name a place.")
    private @Nullable Path folder;

    SessionsCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        Path parent = folder == null ? here.sessions() : folder;
        List<SessionSummary> sessions = SessionFolder.list(parent, here.locks());
        if (sessions.isEmpty()) {
            terminal.out().println("No session lies in " + parent + ".");
        }
        sessions.forEach(session -> terminal.out().println(line(session)));
        return 0;
    }

    private String line(SessionSummary session) {
        String began = session.began()
                .map(instant -> BEGAN.format(instant.atZone(here.zone())))
                .orElse("-");
        long seconds = Math.round(session.length().seconds());
        String line = String.format(
                Locale.ROOT,
                "%-16s  %-10s  %2d %s  %3d:%02d  %s  %s",
                began,
                Labels.of(session.standing()),
                session.takes(),
                session.takes() == 1 ? "take " : "takes",
                seconds / 60,
                seconds % 60,
                session.title(),
                session.folder());
        return session.trouble().isEmpty() ? line : line + "  (" + session.trouble() + ")";
    }
}
