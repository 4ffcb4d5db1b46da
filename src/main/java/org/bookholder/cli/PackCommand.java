package org.bookholder.cli;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.session.SessionPacking;
import org.bookholder.problem.ProblemException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Packs a session into an archive. */
@Command(
        name = "pack",
        sortOptions = false,
        description = {
            "Pack a session into one ZIP archive, to keep it safe or to take it to another machine: takes, notes and "
                    + "script, with a checksum for each file. Camera files are not packed.",
            "bookholder unpack opens it again. Without Bookholder: unzip it, then check it with 'sha256sum -c "
                    + "SHA256SUMS'."
        })
final class PackCommand implements Callable<Integer> {
    private final Environment here;
    private final Terminal terminal;

    @Parameters(
            index = "0",
            paramLabel = "SESSION|LESSON",
            description = "The session's folder, or the lesson's script for its latest session.")
    private @Nullable Path session;

    @Parameters(index = "1", paramLabel = "FILE.zip", description = "The archive to write.")
    private @Nullable Path archive;

    @Option(names = "--replace", description = "Replace the archive if it is there already.")
    private boolean replace;

    PackCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        Path place = LatestSession.of(Objects.requireNonNull(session), here, terminal);
        Path file = Objects.requireNonNull(archive);
        int interrupted = new Recovery(here, terminal).settle(place);
        if (interrupted != 0) {
            return interrupted;
        }
        return InterruptibleCommand.run(terminal, "nothing was packed", stop -> {
            SessionPacking.Packed packed;
            try (ProgressBar bar = new ProgressBar(terminal.err(), Terminal.console(), here.nanoTime())) {
                packed = new SessionPacking(here, bar::show, stop).pack(place, file, replace);
            }
            terminal.out()
                    .printf(
                            Locale.ROOT,
                            "Packed: %s (%d files, %.1f MB)%n",
                            file,
                            packed.files(),
                            packed.bytes() / 1e6);
            terminal.out().println("To open it on any machine: bookholder unpack " + file);
            return 0;
        });
    }
}
