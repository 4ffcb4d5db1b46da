package org.bookholder.app.footage;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.OperationInterrupted;
import org.bookholder.app.footage.FootageLogRequest.Join;
import org.bookholder.app.reading.ReadingControl;
import org.bookholder.app.reading.ReadingRequest;
import org.bookholder.app.reading.ReadingService;
import org.bookholder.app.session.ScriptFile;
import org.bookholder.app.session.SessionFolders;
import org.bookholder.app.session.StoredSession;
import org.bookholder.footage.Footage;
import org.bookholder.footage.Hearing;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.footage.Placement;
import org.bookholder.footage.RecordingJoiner;
import org.bookholder.footage.WholeRecording;
import org.bookholder.footage.ffmpeg.FootageFile;
import org.bookholder.footage.ffmpeg.FootageSound;
import org.bookholder.footage.ffmpeg.FootageSource;
import org.bookholder.footage.ffmpeg.SoundBorder;
import org.bookholder.journal.FootageNotes;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.take.Conduct;
import org.bookholder.session.Take;
import org.bookholder.timing.StreamTime;

/**
 * Turns footage that was filmed without the program into a session: each recording is followed as if it were a live take.
 * A recording that its camera split into several files is one.
 */
public final class FootageLogging {
    private final Environment here;
    private final FootageLogListener listener;
    private final ReadingControl control;

    /**
     * Creates one that reports to {@code listener}. If {@code control} asks for the end, the current take ends and no
     * other begins.
     */
    public FootageLogging(Environment here, FootageLogListener listener, ReadingControl control) {
        this.here = here;
        this.listener = listener;
        this.control = control;
    }

    /**
     * Follows the files, and saves in the session which take lies in which file.
     *
     * @return the session's folder
     * @throws ProblemException if a file cannot be read; all are checked before the first is followed
     * @throws OperationInterrupted if it was stopped before anything was followed
     */
    public Path log(FootageLogRequest request) throws ProblemException {
        List<WholeRecording> recordings = recordings(request);
        String title = ScriptFile.read(request.script()).script().title();
        Path place = request.session().orElseGet(() -> SessionFolders.unused(here.sessions(), title, here));
        if (SessionFolder.isSession(place)) {
            throw new ProblemException(
                    "holds a session already", place.toString(), "choose an empty or a new folder for the session");
        }
        List<FilmSources> followed = new ArrayList<>();
        boolean more = true;
        for (int i = 0; i < recordings.size() && more; i++) {
            FilmSources sources =
                    new FilmSources(recordings.get(i), here.clock().instant());
            followed.add(sources);
            more = follow(request, place, recordings.get(i), sources, i == 0) && !control.interrupted();
        }
        keep(place, recordings, followed);
        return place;
    }

    private List<WholeRecording> recordings(FootageLogRequest request) throws ProblemException {
        List<Footage> films = new ArrayList<>();
        for (Path file : request.files()) {
            films.add(FootageFile.look(file));
            FootageSound.open(file, FootageSource.RATE).close();
        }
        if (request.join() == Join.NONE) {
            return films.stream().map(WholeRecording::of).toList();
        }
        RecordingJoiner joiner = new RecordingJoiner(new SoundBorder(), request.join() == Join.BY_NUMBERS);
        List<WholeRecording> recordings = joiner.join(films);
        joiner.apart(recordings).forEach(listener::apart);
        return recordings;
    }

    /** Returns whether the recording was followed. If one is stopped before it begins, the takes before it are kept. */
    private boolean follow(
            FootageLogRequest request, Path place, WholeRecording recording, FilmSources sources, boolean first)
            throws ProblemException {
        try {
            ReadingService reading =
                    new ReadingService(here.at(sources), take(request, place), listener.following(recording), control);
            listener.followed(reading.read(sources));
            return true;
        } catch (OperationInterrupted e) {
            if (first) {
                throw e;
            }
            return false;
        }
    }

    private static ReadingRequest take(FootageLogRequest request, Path place) {
        return new ReadingRequest(
                request.script(),
                List.of(),
                Optional.empty(),
                Optional.of(place),
                true,
                Optional.empty(),
                Conduct.PLAIN,
                Optional.empty(),
                Optional.empty(),
                false,
                false,
                true,
                Optional.empty(),
                Optional.empty(),
                request.model());
    }

    /** Take and recording have the same sound, so no matching is needed. */
    private void keep(Path place, List<WholeRecording> recordings, List<FilmSources> followed) throws ProblemException {
        try (StoredSession kept = StoredSession.open(here, place)) {
            List<Take> takes = kept.state().takes().all();
            List<PlacedFootage> placed = new ArrayList<>();
            for (int i = 0; i < Math.min(followed.size(), takes.size()); i++) {
                Take take = takes.get(i);
                List<Hearing> hearings =
                        followed.get(i).hearing(take.number()).stream().toList();
                placed.addAll(placed(recordings.get(i), take, hearings));
            }
            FootageNotes.keep(place, placed);
        }
    }

    /** The files of a recording that the take reaches into; the last may sound longer than it has pictures. */
    private static List<PlacedFootage> placed(WholeRecording recording, Take take, List<Hearing> hearings) {
        List<PlacedFootage> placed = new ArrayList<>();
        int count = recording.parts().size();
        for (int part = 0; part < count; part++) {
            StreamTime begins = recording.begins(part);
            StreamTime from = take.start().plus(begins);
            StreamTime to = part == count - 1
                    ? take.end()
                    : StreamTime.min(take.end(), take.start().plus(recording.begins(part + 1)));
            if (part == 0 || from.isBefore(to)) {
                Placement placement = new Placement(take.number(), take.start(), -begins.ticks(), 0, from, to, 1);
                placed.add(new PlacedFootage(recording.parts().get(part), List.of(placement), hearings));
            }
        }
        return placed;
    }
}
