package org.bookholder.testing;

import java.nio.file.Path;
import org.bookholder.delivery.FilmCheck;
import org.bookholder.delivery.Profile;
import org.bookholder.footage.ffmpeg.FilmReader;
import org.bookholder.problem.ProblemException;

/** Checks picture and sound of a whole film. */
public final class CheckedFilm {
    private CheckedFilm() {}

    /** What a check against a profile finds. */
    public static FilmCheck.Result of(Path film, Profile profile) throws ProblemException {
        try (FilmReader reader = FilmReader.open(film)) {
            FilmCheck check = new FilmCheck(reader.film(), profile);
            boolean more = true;
            while (more) {
                more = reader.read(check);
            }
            return check.end(reader.pictureEnd(), reader.soundEnd(), reader.damaged());
        }
    }
}
