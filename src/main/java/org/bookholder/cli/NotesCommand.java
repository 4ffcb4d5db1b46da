package org.bookholder.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.StoredSession;
import org.bookholder.problem.ProblemException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes the notes of a session. */
@Command(
        name = "notes",
        sortOptions = false,
        description = {
            "Show what was noted in a session: the lines to pick up, with what was said instead.",
            "Also works while the session is still open, and after it was broken off."
        })
final class NotesCommand implements Callable<Integer> {
    private final Environment here;
    private final Terminal terminal;

    @Parameters(
            index = "0",
            paramLabel = "SESSION|LESSON",
            description = "The session's folder, or the lesson's script for its latest session.")
    private @Nullable Path folder;

    @ArgGroup
    private @Nullable Kind kind;

    NotesCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    /** At most one of these options; without any, the list for people is written. */
    static final class Kind {
        @Option(names = "--json", description = "All notes as JSON, for other programs.")
        private boolean json;

        @Option(names = "--trace", description = "Each change of the reading position, as JSON lines.")
        private boolean trace;
    }

    @Override
    public Integer call() throws ProblemException, IOException {
        Path place = LatestSession.of(Objects.requireNonNull(folder), here, terminal);
        int interrupted = new Recovery(here, terminal).settle(place);
        if (interrupted != 0) {
            return interrupted;
        }
        try (StoredSession session = StoredSession.open(here, place)) {
            Installed.exporter(name()).write(session.state(), session.events(), terminal.out());
            terminal.out().flush();
        }
        return 0;
    }

    private String name() {
        if (kind != null && kind.json) {
            return "json";
        }
        return kind != null && kind.trace ? "trace" : "list";
    }
}
