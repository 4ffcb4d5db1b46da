package org.bookholder.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionSummary;
import org.bookholder.problem.ProblemException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Lists the sessions that were kept. */
@Command(
        name = "sessions",
        mixinStandardHelpOptions = true,
        description = "Lists the sessions kept on this machine, also those that were broken off.")
final class SessionsCommand implements Callable<Integer> {
    @Parameters(
            arity = "0..1",
            paramLabel = "FOLDER",
            description = "Where to look; by default where sessions are kept.")
    private @Nullable Path folder;

    @Override
    public Integer call() throws ProblemException {
        Path place = folder == null ? Places.sessions() : folder;
        List<SessionSummary> found = Files.isDirectory(place) ? SessionFolder.list(place) : List.of();
        if (found.isEmpty()) {
            System.out.println("No sessions in " + place);
        }
        for (SessionSummary summary : found) {
            System.out.println(summary);
        }
        return 0;
    }
}
