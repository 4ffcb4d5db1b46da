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
import org.bookholder.footage.Footage;
import org.bookholder.footage.PictureFacts;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.footage.Placement;
import org.bookholder.footage.ffmpeg.FootageFile;
import org.bookholder.footage.ffmpeg.PictureFile;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.FilmChoices;
import org.bookholder.session.Take;
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
     * The files of a session.
     *
     * @param remarks receives what a person should know of them, one sentence each
     * @throws ProblemException if one that was matched and that the film can't do without is not there, or not whole
     */
    static FilmPlanner.Sources of(StoredSession kept, List<String> remarks) throws ProblemException {
        SessionSources sources = SessionSources.of(kept);
        Path session = kept.folder().path();
        Map<Path, Footage> files = new HashMap<>();
        Map<Path, PictureFacts> pictures = new HashMap<>();
        for (PlacedFootage placed : sources.footage()) {
            Path file = placed.footage().file();
            if (!Files.isRegularFile(file) && !needed(placed, sources)) {
                remarks.add(gone(file, session).getMessage() + "; meanwhile it is done without");
                continue;
            }
            Footage footage = whole(placed.footage(), session);
            files.put(file, footage);
            if (footage.picture().isPresent()) {
                pictures.put(file, PictureFile.look(file));
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
        return new FilmPlanner.Sources(cameras, tracks);
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

    /** Whether a file that is gone showed something that no other one shows. */
    private static boolean needed(PlacedFootage gone, SessionSources sources) {
        return gone.footage().picture().isPresent()
                && gone.placements().stream()
                        .anyMatch(place -> sources.takes().stream()
                                .filter(take -> take.take().number() == place.take())
                                .flatMap(take -> take.pictures().stream())
                                .filter(TakeSources.Source::there)
                                .flatMap(source -> source.footage().orElseThrow().placement(place.take()).stream())
                                .noneMatch(other -> !place.from().isBefore(other.from())
                                        && !other.to().isBefore(place.to())));
    }

    private static Footage whole(Footage noted, Path session) throws ProblemException {
        if (!Files.isRegularFile(noted.file())) {
            throw gone(noted.file(), session);
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

    private static ProblemException gone(Path file, Path session) {
        return new ProblemException(
                file.getFileName() + " is not where it was matched any more",
                file.toString(),
                "put it back, or match the camera file where it is now: bookholder match " + session + " FILE");
    }
}
