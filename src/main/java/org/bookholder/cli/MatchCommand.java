package org.bookholder.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.footage.FileMatch;
import org.bookholder.app.footage.FootageMatching;
import org.bookholder.app.footage.MatchText;
import org.bookholder.app.footage.MissedTake;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.problem.ProblemException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Finds the place of footage in a session. */
@Command(
        name = "match",
        sortOptions = false,
        description = {
            "Find by their sound where camera and recorder files lie in a session. From then on 'bookholder handoff' "
                    + "points into them, with their own timecode.",
            "Where several files show the same moment, the one that was named first is used."
        })
final class MatchCommand implements Callable<Integer> {
    private final Environment here;
    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "SESSION", description = "The session's folder.")
    private @Nullable Path session;

    @Parameters(index = "1..*", arity = "1..*", paramLabel = "FILE", description = "Camera and recorder files.")
    private @Nullable List<Path> files;

    MatchCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        return InterruptibleCommand.run(terminal, "what was matched so far is not kept", stop -> {
            List<FileMatch> matches = new FootageMatching(here, progress -> {}, stop)
                    .match(Objects.requireNonNull(session), Objects.requireNonNull(files), this::print);
            terminal.out().flush();
            return matches.stream().allMatch(match -> match.problem().isEmpty()) ? 0 : Main.NOT_OUR_FAULT;
        });
    }

    private void print(FileMatch match) {
        match.placed().ifPresent(this::print);
        for (MissedTake missed : match.missed()) {
            terminal.out().println(match.file().getFileName() + ": " + MatchText.of(missed));
        }
        match.problem().ifPresent(problem -> terminal.warn(problem.getMessage()));
    }

    private void print(PlacedFootage placed) {
        String name = placed.footage().name();
        MatchText.of(placed).forEach(line -> terminal.out().println(name + ": " + line));
        MatchText.caution(placed.footage()).ifPresent(line -> terminal.err().println("bookholder: " + line));
    }
}
