package org.bookholder.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.session.StoredSession;
import org.bookholder.footage.Footage;
import org.bookholder.footage.FootageMatcher;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.footage.Placement;
import org.bookholder.footage.SoundTrack;
import org.bookholder.footage.StoredTrack;
import org.bookholder.footage.ffmpeg.FootageFile;
import org.bookholder.footage.ffmpeg.FootageSound;
import org.bookholder.journal.FootageNotes;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Take;
import org.bookholder.timing.StreamTime;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Finds where footage lies in a session. */
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
        return InterruptibleCommand.run(terminal, "what was matched so far is not kept", this::match);
    }

    private int match(Interruption stop) throws ProblemException {
        int status = 0;
        List<PlacedFootage> found = new ArrayList<>();
        try (StoredSession kept = StoredSession.open(here, Objects.requireNonNull(session));
                TakeTracks takes = TakeTracks.of(kept, stop)) {
            for (Path file : Objects.requireNonNull(files)) {
                try {
                    PlacedFootage placed = match(file, takes, stop);
                    found.add(placed);
                    tell(placed);
                } catch (ProblemException e) {
                    // The other files may match all the same.
                    terminal.err().println("bookholder: " + e.getMessage());
                    status = 2;
                }
            }
            if (!found.isEmpty()) {
                FootageNotes.keep(kept.folder().path(), found);
            }
        }
        terminal.out().flush();
        return status;
    }

    private static PlacedFootage match(Path file, TakeTracks takes, Interruption stop) throws ProblemException {
        Footage footage = FootageFile.look(file);
        List<Placement> placements = new ArrayList<>();
        try (StoredTrack film = stored(footage.file(), stop)) {
            FootageMatcher matcher = new FootageMatcher();
            for (TakeTracks.Track take : takes.tracks()) {
                matcher.match(
                                stop.over(film),
                                take.sound(),
                                take.take().number(),
                                take.take().start())
                        .ifPresent(placements::add);
            }
        }
        if (placements.isEmpty()) {
            throw new ProblemException(
                    "no take of the session can be heard in it",
                    file.toString(),
                    "check that it is of this session and that its sound was on");
        }
        return new PlacedFootage(footage, placements);
    }

    private static StoredTrack stored(Path file, Interruption stop) throws ProblemException {
        try (FootageSound sound = FootageSound.open(file, SoundTrack.RATE)) {
            return StoredTrack.of(() -> {
                stop.check();
                return sound.read();
            });
        }
    }

    private void tell(PlacedFootage placed) {
        Footage footage = placed.footage();
        for (Placement placement : placed.placements()) {
            double start = (double) placement.start() / StreamTime.TICKS_PER_SECOND;
            terminal.out()
                    .printf(
                            Locale.ROOT,
                            "%s: take %d begins %s, clock %+.1f ppm, confidence %.2f%n",
                            footage.name(),
                            placement.take(),
                            start < 0
                                    ? String.format(Locale.ROOT, "%.3f s before the file", -start)
                                    : String.format(Locale.ROOT, "at %.3f s", start),
                            placement.driftPpm(),
                            placement.confidence());
        }
        if (footage.picture().filter(Footage.Picture::variable).isPresent()) {
            terminal.err()
                    .println("bookholder: " + footage.file()
                            + ": its frame rate varies, so that frame numbers may be out; convert it to a constant"
                            + " rate before it is edited");
        }
    }

    /** The takes' sound, each in a temporary file. */
    private record TakeTracks(List<Track> tracks) implements AutoCloseable {
        private record Track(Take take, StoredTrack sound) {}

        static TakeTracks of(StoredSession kept, Interruption stop) throws ProblemException {
            TakeTracks all = new TakeTracks(new ArrayList<>());
            try {
                for (Take take : kept.state().takes().all()) {
                    Path file = kept.folder().takeFile(take.number());
                    if (file.toFile().isFile()) {
                        all.tracks.add(new Track(take, stored(file, stop)));
                    }
                }
                if (all.tracks.isEmpty()) {
                    throw new ProblemException(
                            "no take of it was recorded, so that nothing can be compared",
                            kept.folder().path().toString(),
                            "use 'bookholder log' with the script and the files");
                }
                return all;
            } catch (ProblemException | RuntimeException e) {
                all.close();
                throw e;
            }
        }

        @Override
        public void close() {
            tracks.forEach(track -> track.sound().close());
        }
    }
}
