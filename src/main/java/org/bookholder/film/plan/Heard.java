package org.bookholder.film.plan;

import java.nio.file.Path;

/**
 * The sound of a clip.
 *
 * @param file the file that it is taken from
 * @param kind what recorded it
 * @param from where the clip's first sample lies in the file, in ticks of {@link org.bookholder.timing.StreamTime}, with
 *     fractions
 * @param step how many ticks of the file's clock one tick of the film takes: 1 but for the drift between the two clocks
 */
public record Heard(Path file, Track.Kind kind, double from, double step) {}
