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
        return new FilmRequest(
                session,
                Optional.empty(),
                false,
                Set.of(),
                true,
                false,
                Optional.of(FilmedReading.smallProfile(folder.resolve("small.txt"), NumberedCamera.HEIGHT)),
                false,
                false,
                FilmPlanner.Wishes.NONE);
    }
}
