package org.bookholder.app.film;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.bookholder.app.session.StoredSession;
import org.bookholder.film.plan.Camera;
import org.bookholder.film.plan.FilmPlanner;
import org.bookholder.film.plan.Track;
import org.bookholder.footage.Footage;
import org.bookholder.footage.PictureFacts;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.footage.Placement;
import org.bookholder.footage.ffmpeg.FootageFile;
import org.bookholder.footage.ffmpeg.PictureFile;
import org.bookholder.journal.FootageNotes;
import org.bookholder.journal.TakeFile;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.FilmChoices;
import org.bookholder.session.Take;

/** Looks at the files in which a session can be seen and heard: whether they are there still, and whole. */
final class FilmFootage {
    /** A file that is shorter than when it was matched by more than this many seconds was cut short. */
    private static final double SHORTER = 0.5;

    /** Stands for the recordings of all takes where others have a file's name. */
    static final String TAKES = "the take's recording";

    private FilmFootage() {}

    /** The name of what a track is heard from: its file's, or {@link #TAKES}. */
    static String name(Path file, Track.Kind kind) {
        return kind == Track.Kind.TAKE ? TAKES : String.valueOf(file.getFileName());
    }

    /**
     * The files of a session.
     *
     * @throws ProblemException if one that was matched is not there, or not whole
     */
    static FilmPlanner.Sources of(StoredSession kept) throws ProblemException {
        Path session = kept.folder().path();
        List<PlacedFootage> noted = FootageNotes.read(session);
        Optional<String> sound = kept.state().remarks().film(0).sound();
        List<Camera> cameras = new ArrayList<>();
        List<Track> tracks = new ArrayList<>();
        for (PlacedFootage placed : noted) {
            if (superseded(placed, noted)) {
                continue;
            }
            Footage footage = whole(placed.footage(), session);
            if (footage.picture().isPresent()) {
                PictureFacts picture = PictureFile.look(footage.file());
                FilmChoices.Point point =
                        kept.state().remarks().film(0).points().getOrDefault(footage.name(), FilmChoices.Point.EYES);
                placed.placements()
                        .forEach(p -> cameras.add(new Camera(footage, picture, p.within(footage.length()), point)));
            }
            Track.Kind kind = footage.picture().isPresent() ? Track.Kind.CAMERA : Track.Kind.RECORDER;
            if (footage.sound().isPresent()) {
                placed.placements()
                        .forEach(p -> tracks.add(
                                new Track(footage.file(), kind, p, sound.equals(Optional.of(footage.name())))));
            }
        }
        for (Take take : kept.state().takes().all()) {
            Path file = kept.folder().takeFile(take.number());
            if (TakeFile.holdsSound(file)) {
                boolean wanted = sound.equals(Optional.of(TAKES));
                Placement whole = Placement.whole(take.number(), take.start(), take.end());
                tracks.add(new Track(file, Track.Kind.TAKE, whole, wanted));
            }
        }
        return new FilmPlanner.Sources(cameras, tracks);
    }

    /** Whether a file was moved and matched again where it is now. */
    private static boolean superseded(PlacedFootage placed, List<PlacedFootage> all) {
        return !Files.isRegularFile(placed.footage().file())
                && all.stream()
                        .map(PlacedFootage::footage)
                        .anyMatch(other ->
                                other.name().equals(placed.footage().name()) && Files.isRegularFile(other.file()));
    }

    private static Footage whole(Footage noted, Path session) throws ProblemException {
        if (!Files.isRegularFile(noted.file())) {
            throw new ProblemException(
                    "is not there any more",
                    noted.file().toString(),
                    "put it back, or match it where it is now: bookholder match " + session + " FILE");
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
