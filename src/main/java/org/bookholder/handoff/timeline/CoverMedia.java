package org.bookholder.handoff.timeline;

import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.script.model.Cover;
import org.bookholder.timing.StreamTime;

/**
 * The file of a picture or clip of the author's.
 *
 * @param cover what the script says of it
 * @param file where it lies
 * @param length how long it lasts; empty for a still picture
 */
public record CoverMedia(Cover cover, Path file, Optional<StreamTime> length) {}
