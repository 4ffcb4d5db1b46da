package org.bookholder.film.plan;

import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.footage.Channels;

/**
 * The sound of a clip.
 *
 * @param file the file that it is taken from
 * @param kind what recorded it
 * @param channels the channels that are heard; empty for those in which a voice is heard best
 * @param from where the clip's first sample lies in the file, in ticks of {@link org.bookholder.timing.StreamTime}, with
 *     fractions
 * @param step how many ticks of the file's clock one tick of the film takes: 1 but for the drift between the two clocks
 */
public record Heard(Path file, Track.Kind kind, Optional<Channels> channels, double from, double step) {
    /** What is heard, whatever part of it. */
    public Source source() {
        return new Source(file, channels);
    }

    /** A file and the channels of it that are heard. */
    public record Source(Path file, Optional<Channels> channels) {}
}
