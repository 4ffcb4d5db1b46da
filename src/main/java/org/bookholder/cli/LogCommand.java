package org.bookholder.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.footage.FilmSources;
import org.bookholder.app.handoff.HandOffRequest;
import org.bookholder.app.handoff.HandOffService;
import org.bookholder.app.session.ScriptFile;
import org.bookholder.app.session.SessionFolders;
import org.bookholder.app.session.StoredSession;
import org.bookholder.footage.Footage;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.footage.Placement;
import org.bookholder.footage.ffmpeg.FootageFile;
import org.bookholder.footage.ffmpeg.FootageSound;
import org.bookholder.footage.ffmpeg.FootageSource;
import org.bookholder.journal.FootageNotes;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.Shutdown;
import org.bookholder.session.Take;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Makes a session and a hand-off of footage that was filmed without the program. */
@Command(
        name = "log",
        sortOptions = false,
        description = {
            "Follow footage that was filmed before, as if it were live: each file becomes a take of a session. Out"
                    + " come the lines to pick up and the hand-off, which points into the files."
        })
final class LogCommand implements Callable<Integer> {
    private final Environment here;
    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "SCRIPT", description = "The lesson: a Markdown or plain text file.")
    private @Nullable Path script;

    @Parameters(
            index = "1..*",
            arity = "1..*",
            paramLabel = "FILE",
            description = "Camera or recorder files, in the order in which they were filmed.")
    private @Nullable List<Path> files;

    @Option(names = "--session", paramLabel = "FOLDER", description = "Where the session is kept.")
    private @Nullable Path session;

    @Option(names = "--model", paramLabel = "FOLDER", description = "Use this speech model (Vosk).")
    private @Nullable Path model;

    @Mixin
    private final HandOffOptions options = new HandOffOptions();

    LogCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        Path text = Objects.requireNonNull(script);
        HandOffRequest handOff = options.request();
        List<Footage> films = looked();
        Path place = session == null
                ? SessionFolders.unused(
                        here.sessions(), ScriptFile.read(text).script().title(), here)
                : session;
        if (SessionFolder.isSession(place)) {
            throw new ProblemException(
                    "holds a session already", place.toString(), "name an empty or a new folder with --session");
        }
        try (Shutdown end = Shutdown.onInterrupt(() -> {})) {
            int status = follow(text, place, films, end);
            note(place, films);
            if (end.asked()) {
                terminal.out().println("What was followed so far can be handed off: bookholder handoff " + place);
                return status;
            }
            return InterruptibleCommand.run(terminal, HandOffOutput.INTERRUPTED, stop -> {
                HandOffOutput.print(new HandOffService(here, handOff, stop).write(place), terminal);
                return status;
            });
        }
    }

    /** Follows one file after another; Ctrl-C ends the take in order, and no other is begun. */
    private int follow(Path text, Path place, List<Footage> films, Shutdown end) throws ProblemException {
        int status = 0;
        for (int i = 0; i < films.size() && !end.asked(); i++) {
            terminal.out().println("Following " + films.get(i).name());
            FilmSources sources = new FilmSources(films.get(i), here.clock().instant());
            Sitting sitting = new Sitting(here.at(sources), terminal, request(text, place), Optional.of(sources));
            status = Math.max(status, sitting.run());
        }
        return status;
    }

    /** What is wrong with a file is found out before the first of them is followed. */
    private List<Footage> looked() throws ProblemException {
        List<Footage> films = new ArrayList<>();
        for (Path file : Objects.requireNonNull(files)) {
            films.add(FootageFile.look(file));
            FootageSound.open(file, FootageSource.RATE).close();
        }
        return films;
    }

    private ReadRequest request(Path text, Path place) {
        return new ReadRequest(
                text,
                Optional.of(place),
                true,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                false,
                false,
                true,
                Optional.empty(),
                Optional.empty(),
                model == null ? here.model() : model,
                false);
    }

    /** Take and file are the same sound: where they lie needs no matching. */
    private void note(Path place, List<Footage> films) throws ProblemException {
        try (StoredSession kept = StoredSession.open(here, place)) {
            List<Take> takes = kept.state().takes().all();
            List<PlacedFootage> placed = new ArrayList<>();
            for (int i = 0; i < Math.min(films.size(), takes.size()); i++) {
                Take take = takes.get(i);
                Placement placement = Placement.whole(take.number(), take.start(), take.end());
                placed.add(new PlacedFootage(films.get(i), List.of(placement)));
            }
            FootageNotes.keep(place, placed);
        }
    }
}
