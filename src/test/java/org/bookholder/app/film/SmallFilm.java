package org.bookholder.app.film;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import org.bookholder.film.FilmedReading;
import org.bookholder.film.NumberedCamera;
import org.bookholder.film.plan.FilmPlanner;

/** The film of a session whose cameras are {@link NumberedCamera}s. */
final class SmallFilm {
    private SmallFilm() {}

    /** Asks for a final film that is not checked; its delivery profile is written into {@code folder}. */
    static FilmRequest of(Path session, Path folder) throws IOException {
        return of(
                session,
                Optional.empty(),
                false,
                Set.of(),
                Optional.of(FilmedReading.smallProfile(folder.resolve("small.txt"), NumberedCamera.HEIGHT)));
    }

    /** Asks for a film as shot, which is not checked, nor made again if it was made. */
    static FilmRequest of(
            Path place, Optional<Path> out, boolean draft, Set<Integer> leaveOut, Optional<Path> profile) {
        return new FilmRequest(
                place, out, draft, leaveOut, true, false, profile, false, false, FilmPlanner.Wishes.NONE);
    }
}
