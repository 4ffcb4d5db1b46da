package org.bookholder.app.footage;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.environment.Progress;
import org.bookholder.app.environment.ProgressMeter;
import org.bookholder.app.session.StoredSession;
import org.bookholder.footage.ChannelChooser;
import org.bookholder.footage.ChannelPowers;
import org.bookholder.footage.Channels;
import org.bookholder.footage.Footage;
import org.bookholder.footage.Hearing;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.footage.Placement;
import org.bookholder.footage.SoundTrack;
import org.bookholder.footage.StoredTrack;
import org.bookholder.footage.ffmpeg.FootageFile;
import org.bookholder.footage.ffmpeg.FootageSound;
import org.bookholder.journal.FootageNotes;
import org.bookholder.journal.TakeFile;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Take;

/** Finds the place of camera and recorder files in a stored session by their sound, and saves it in the session. */
public final class FootageMatching {
    private final Environment here;
    private final Consumer<Progress> progress;
    private final Interruption stop;

    /** Creates one that can be stopped; then nothing is saved. */
    public FootageMatching(Environment here, Consumer<Progress> progress, Interruption stop) {
        this.here = here;
        this.progress = progress;
        this.stop = stop;
    }

    /**
     * Compares files with a session.
     *
     * @param listener receives the result for each file as soon as it is known, on the caller's thread
     * @return the results in order
     * @throws ProblemException if the session cannot be read, or no take of it was recorded
     */
    public List<FileMatch> match(Path session, List<Path> files, Consumer<FileMatch> listener) throws ProblemException {
        List<FileMatch> matches = new ArrayList<>();
        ProgressMeter meter = new ProgressMeter(here.nanoTime(), progress);
        try (StoredSession kept = StoredSession.open(here, session);
                TakeTracks takes = TakeTracks.of(kept, stop)) {
            for (Path file : files) {
                int before = matches.size();
                String name = String.valueOf(file.getFileName());
                meter.reached(name, (double) before / files.size());
                FileMatch match = compared(file, takes, part -> meter.reached(name, (before + part) / files.size()));
                matches.add(match);
                listener.accept(match);
            }
            List<PlacedFootage> found =
                    matches.stream().flatMap(match -> match.placed().stream()).toList();
            if (!found.isEmpty()) {
                FootageNotes.keep(kept.folder().path(), found);
            }
        }
        return matches;
    }

    /** One file that cannot be matched does not stop the others. */
    private FileMatch compared(Path file, TakeTracks takes, DoubleConsumer reached) {
        try {
            PlacedFootage placed = match(file, takes, reached);
            return new FileMatch(file, Optional.of(placed), missed(placed, takes), Optional.empty());
        } catch (ProblemException e) {
            return new FileMatch(file, Optional.empty(), List.of(), Optional.of(e));
        }
    }

    /** The takes not found in a file whose middle lies in it by the session's clock, set by the first take that was found. */
    private static List<MissedTake> missed(PlacedFootage placed, TakeTracks takes) {
        Placement sure = placed.placements().get(0);
        double length = placed.footage().length().seconds();
        List<MissedTake> missed = new ArrayList<>();
        for (TakeSearch.Track track : takes.tracks()) {
            Take take = track.take();
            double seconds = take.end().since(take.start()).seconds();
            double about = TakeSearch.expected(sure, takes.tracks(), take);
            double middle = about + seconds / 2;
            boolean found = placed.placements().stream().anyMatch(place -> place.take() == take.number());
            if (!found && middle > 0 && middle < length) {
                missed.add(new MissedTake(take.number(), seconds, about));
            }
        }
        return missed;
    }

    private PlacedFootage match(Path file, TakeTracks takes, DoubleConsumer reached) throws ProblemException {
        Footage footage = FootageFile.look(file);
        EachChannel sound = EachChannel.of(file, stop);
        List<Placement> placements = placements(sound.mix(), takes, reached);
        // In the mix of a recorder's channels another microphone can drown the voice, or cancel it out.
        Iterator<Channels> others = placements.isEmpty() && sound.powers().channels() > 1
                ? ChannelChooser.worthASearch(sound.powers()).iterator()
                : Collections.emptyIterator();
        while (placements.isEmpty() && others.hasNext()) {
            placements = placements(stored(file, others.next(), stop), takes, reached);
        }
        if (placements.isEmpty()) {
            throw new ProblemException(
                    "no take of the session can be heard in it",
                    file.toString(),
                    "check that it is of this session and that its sound was on");
        }
        List<Hearing> hearings = new ArrayList<>();
        for (Placement placement : placements) {
            hearings.add(ChannelChooser.best(sound.powers(), takes.powers(placement.take()), placement));
        }
        return new PlacedFootage(footage, placements, hearings);
    }

    private List<Placement> placements(StoredTrack sound, TakeTracks takes, DoubleConsumer reached) {
        try (StoredTrack film = sound) {
            return new TakeSearch(stop.over(film), takes.tracks(), reached).placements();
        }
    }

    private static StoredTrack stored(Path file, Channels heard, Interruption stop) throws ProblemException {
        try (FootageSound sound = FootageSound.open(file, SoundTrack.RATE, heard)) {
            return StoredTrack.of(() -> {
                stop.check();
                return sound.read();
            });
        }
    }

    /** The sound of the takes, each in a temporary file. */
    private record TakeTracks(List<TakeSearch.Track> tracks) implements AutoCloseable {
        static TakeTracks of(StoredSession kept, Interruption stop) throws ProblemException {
            TakeTracks all = new TakeTracks(new ArrayList<>());
            try {
                for (Take take : kept.state().takes().all()) {
                    Path file = kept.folder().takeFile(take.number());
                    if (TakeFile.holdsSound(file)) {
                        all.tracks.add(new TakeSearch.Track(take, stored(file, Channels.ALL, stop)));
                    }
                }
                if (all.tracks.isEmpty()) {
                    throw new ProblemException(
                            "no take of it was recorded, so that nothing can be compared",
                            kept.folder().path().toString(),
                            "log the files instead: that needs only them and the script");
                }
                return all;
            } catch (ProblemException | RuntimeException e) {
                all.close();
                throw e;
            }
        }

        ChannelPowers powers(int take) {
            return tracks.stream()
                    .filter(track -> track.take().number() == take)
                    .map(track -> ChannelPowers.of(track.sound()))
                    .findFirst()
                    .orElseThrow();
        }

        @Override
        public void close() {
            tracks.forEach(track -> track.sound().close());
        }
    }
}
