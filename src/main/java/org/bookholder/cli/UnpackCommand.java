package org.bookholder.cli;

import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.SessionUnpacking;
import org.bookholder.problem.ProblemException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Unpacks a session from an archive. */
@Command(
        name = "unpack",
        description = {
            "Unpack a session that was packed with 'bookholder pack', and check every file in it.",
            "An archive that is damaged is refused, and nothing is left of it."
        })
final class UnpackCommand implements Callable<Integer> {
    private final Environment here;
    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "FILE.zip", description = "The archive.")
    private @Nullable Path archive;

    @Parameters(
            index = "1",
            arity = "0..1",
            paramLabel = "FOLDER",
            description = "The session's new folder. Default: one where your sessions lie, with the name it had.")
    private @Nullable Path folder;

    UnpackCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        Path file = Objects.requireNonNull(archive);
        return InterruptibleCommand.run(terminal, "nothing was unpacked", stop -> {
            Path place;
            try (ProgressBar bar = new ProgressBar(terminal.err(), Terminal.console(), here.nanoTime())) {
                place = new SessionUnpacking(here, bar::show, stop).unpack(file, Optional.ofNullable(folder));
            }
            terminal.out().println("Session: " + place);
            terminal.out().println("To go through it: bookholder desk " + place);
            return 0;
        });
    }
}
