package org.bookholder.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.handoff.Exporter;
import org.bookholder.journal.Replay;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.Script;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Shows what was noted of a session. */
@Command(
        name = "notes",
        mixinStandardHelpOptions = true,
        description = "Shows the lines to pick up of a session, and how the reading went.")
final class NotesCommand implements Callable<Integer> {
    @Parameters(paramLabel = "DIR", description = "The session's folder.")
    private @Nullable Path folder;

    @Option(names = "--json", description = "Everything that was noted, as JSON.")
    private boolean json;

    @Option(names = "--trace", description = "Each change of the reading position, one JSON object a line.")
    private boolean trace;

    @Override
    public Integer call() throws ProblemException, IOException {
        print(Objects.requireNonNull(folder), json ? "json" : trace ? "trace" : "list");
        return 0;
    }

    /** Prints a kept session with the exporter of this name. */
    static void print(Path folder, String kind) throws ProblemException, IOException {
        try (SessionFolder session = SessionFolder.openForReading(folder)) {
            List<SessionEvent> events = session.journal().events();
            SessionEvent.Opened opened = Replay.lastOpened(events)
                    .orElseThrow(() -> new ProblemException(
                            "nothing was read in this session", folder.toString(), "name another session's folder"));
            Script script = Scripts.parse(opened.scriptText(), opened.source());
            SessionState state = Replay.state(Session.begin(script, FatigueLimits.defaults()), events, Session::apply);
            StringBuilder out = new StringBuilder();
            exporter(kind).write(state, events, out);
            System.out.print(out);
            System.out.flush();
        }
    }

    static Exporter exporter(String kind) {
        return Installed.exporters().stream()
                .filter(e -> e.name().equals(kind))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("kind (" + kind + ") must be an installed exporter"));
    }
}
