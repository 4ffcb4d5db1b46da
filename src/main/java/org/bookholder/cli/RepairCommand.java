package org.bookholder.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.RepairText;
import org.bookholder.app.session.SessionRepairs;
import org.bookholder.app.session.SessionSettler;
import org.bookholder.journal.SessionRepair.Report;
import org.bookholder.problem.ProblemException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Repairs a session that is damaged. */
@Command(
        name = "repair",
        description = {
            "Repair a session whose files are damaged: save every note that can still be read, put the headers of "
                    + "recordings back, and listen again to what is missing.",
            "The files as they were are kept in a folder inside the session. A session without damage stays as it is.",
            "What was kept in a second place, because the session's folder was full or gone, is taken in as well."
        })
final class RepairCommand implements Callable<Integer> {
    private final Environment here;
    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "SESSION", description = "The session's folder.")
    private @Nullable Path session;

    @Option(
            names = "--kept",
            paramLabel = "FOLDER",
            description = "Take in what was kept here, if Bookholder does not find the folder by itself.")
    private @Nullable Path kept;

    @Option(names = "--json", description = "Print the result as JSON, for other programs.")
    private boolean json;

    RepairCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        Path place = Objects.requireNonNull(session);
        SessionRepairs.Outcome outcome = SessionRepairs.repairAndTakeIn(here, place, Optional.ofNullable(kept));
        if (!json) {
            RepairText.of(outcome, place.toString()).forEach(terminal.out()::println);
        }
        int status = new Recovery(here, terminal).settle(place);
        if (json) {
            terminal.out()
                    .print(json(outcome.report(), place, outcome.takenIn(), SessionSettler.unsettled(here, place)));
        }
        return status;
    }

    private static String json(Report report, Path place, List<String> takenIn, List<Integer> unsettled) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("session", place.toString());
        root.put("repaired", report.copies().isPresent());
        root.put("copies", report.copies().map(Path::toString).orElse(null));
        root.put("saved", report.saved());
        root.put("gone", report.gone());
        root.put("changed", report.changed());
        root.put("script_copied", report.scriptCopied());
        report.takesPutBack().forEach(root.putArray("takes_put_back")::add);
        ArrayNode headers = root.putArray("headers");
        report.headers().forEach(file -> headers.add(String.valueOf(file.getFileName())));
        report.lost().forEach(root.putArray("lost")::add);
        takenIn.forEach(root.putArray("taken_in")::add);
        unsettled.forEach(root.putArray("not_listened_to")::add);
        return root.toPrettyString() + "\n";
    }
}
