package org.bookholder.app.film;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.bookholder.app.session.SessionSources;
import org.bookholder.app.session.StoredSession;
import org.bookholder.cutlist.TakeSources;
import org.bookholder.film.plan.Camera;
import org.bookholder.film.plan.FilmPlanner;
import org.bookholder.film.plan.Track;
import org.bookholder.follow.model.Attempt;
import org.bookholder.footage.Footage;
import org.bookholder.footage.PictureFacts;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.footage.Placement;
import org.bookholder.footage.ffmpeg.FootageFile;
import org.bookholder.footage.ffmpeg.PictureFile;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.FilmChoices;
import org.bookholder.session.Take;
import org.bookholder.timing.StreamTime;
import org.bookholder.wording.TakeSourcesText;

/** Looks at the files in which a session can be seen and heard: whether they are there still, and whole. */
final class FilmFootage {
    /** A file that is shorter than when it was matched by more than this many seconds was cut short. */
    private static final double SHORTER = 0.5;

    private FilmFootage() {}

    /** The name of what a track is heard from: its file's, or {@link FilmChoices#TAKES}. */
    static String name(Path file, Track.Kind kind) {
        return kind == Track.Kind.TAKE ? FilmChoices.TAKES : String.valueOf(file.getFileName());
    }

    /**
     * What was found of a session's files.
     *
     * @param sources those that can be used
     * @param lost those that cannot
     * @param takes which of the session's files are used for each take
     */
    record Found(FilmPlanner.Sources sources, List<LostFile> lost, List<TakeSources> takes) {
        Found {
            takes = List.copyOf(takes);
            lost = List.copyOf(lost);
        }

        /** Whether an attempt would be seen if no file were lost, and is not seen now. */
        boolean hides(Attempt attempt) {
            return lost.stream().anyMatch(file -> file.showed(attempt))
                    && !(shows(attempt.take(), attempt.start()) && shows(attempt.take(), attempt.end()));
        }

        private boolean shows(int take, StreamTime at) {
            return sources.cameras().stream()
                    .anyMatch(camera -> camera.placement().take() == take
                            && camera.placement().covers(at));
        }
    }

    /**
     * The files of a session.
     *
     * @param number the session's number, from 0
     * @param remarks receives what a person should know of them, one sentence each
     * @throws ProblemException if the notes on them cannot be read
     */
    static Found of(StoredSession kept, int number, List<String> remarks) throws ProblemException {
        SessionSources sources = SessionSources.of(kept);
        Path session = kept.folder().path();
        Map<Path, Footage> files = new HashMap<>();
        Map<Path, PictureFacts> pictures = new HashMap<>();
        List<LostFile> lost = new ArrayList<>();
        for (PlacedFootage placed : sources.footage()) {
            Path file = placed.footage().file();
            try {
                Footage footage = whole(placed.footage());
                if (footage.picture().isPresent()) {
                    pictures.put(file, PictureFile.look(file));
                }
                files.put(file, footage);
            } catch (ProblemException e) {
                lost.add(new LostFile(number, session, placed, e));
            }
        }
        List<Camera> cameras = new ArrayList<>();
        List<Track> tracks = new ArrayList<>();
        for (TakeSources take : sources.takes()) {
            Stream.concat(take.picture().stream(), take.sound().stream())
                    .map(missed -> TakeSourcesText.remark(take, missed))
                    .forEach(remarks::add);
            for (TakeSources.Source source : take.pictures()) {
                camera(source, take, files, pictures, kept).ifPresent(cameras::add);
            }
            for (int rank = 0; rank < take.sounds().size(); rank++) {
                track(take.sounds().get(rank), take, rank, files, kept).ifPresent(tracks::add);
            }
        }
        return new Found(new FilmPlanner.Sources(cameras, tracks), lost, sources.takes());
    }

    private static Optional<Camera> camera(
            TakeSources.Source source,
            TakeSources take,
            Map<Path, Footage> files,
            Map<Path, PictureFacts> pictures,
            StoredSession kept) {
        PlacedFootage placed = source.footage().orElseThrow();
        Footage footage = files.get(placed.footage().file());
        PictureFacts picture = pictures.get(placed.footage().file());
        if (footage == null || picture == null) {
            return Optional.empty();
        }
        FilmChoices.Point point =
                kept.state().remarks().film(0).points().getOrDefault(footage.name(), FilmChoices.Point.EYES);
        return placed.placement(take.take().number())
                .map(place -> new Camera(footage, picture, place.within(footage.length()), point));
    }

    private static Optional<Track> track(
            TakeSources.Source source, TakeSources take, int rank, Map<Path, Footage> files, StoredSession kept) {
        Take own = take.take();
        if (source.footage().isEmpty()) {
            return Optional.of(new Track(
                    kept.folder().takeFile(own.number()),
                    Track.Kind.TAKE,
                    Placement.whole(own.number(), own.start(), own.end()),
                    rank,
                    source.channels()));
        }
        PlacedFootage placed = source.footage().get();
        Footage footage = files.get(placed.footage().file());
        if (footage == null || footage.sound().isEmpty()) {
            return Optional.empty();
        }
        Track.Kind kind = footage.picture().isPresent() ? Track.Kind.CAMERA : Track.Kind.RECORDER;
        return placed.placement(own.number())
                .map(place -> new Track(footage.file(), kind, place, rank, source.channels()));
    }

    private static Footage whole(Footage noted) throws ProblemException {
        if (!Files.isRegularFile(noted.file())) {
            throw new ProblemException(
                    "is not where it was matched any more",
                    noted.file().toString(),
                    "put it back, or match it again where it is now");
        }
        Footage now = FootageFile.look(noted.file());
        if (now.length().seconds() < noted.length().seconds() - SHORTER) {
            throw new ProblemException(
                    String.format(
                            Locale.ROOT,
                            "was %.1f s long when it was matched and is %.1f s now",
                            noted.length().seconds(),
                            now.length().seconds()),
                    noted.file().toString(),
                    "copy it from its card again");
        }
        return now;
    }
}
