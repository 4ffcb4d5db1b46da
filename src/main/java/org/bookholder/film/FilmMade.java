package org.bookholder.film;

import java.nio.file.Path;
import java.util.List;
import org.bookholder.sound.LoudnessReading;

/**
 * A film that was made.
 *
 * @param file its file
 * @param beside the files with its captions and its text
 * @param seconds how long it is
 * @param loudness what its sound measured before it was encoded
 * @param held whether peaks of the sound had to be held down
 */
public record FilmMade(Path file, List<Path> beside, double seconds, LoudnessReading loudness, boolean held) {
    /** Copies the list. */
    public FilmMade {
        beside = List.copyOf(beside);
    }
}
