package org.bookholder.handoff.timeline;

import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.footage.Footage;
import org.bookholder.footage.Placement;
import org.bookholder.timing.StreamTime;

/**
 * A file that a take, or part of one, can be seen or heard in.
 *
 * @param reel a short name for it: up to eight capital letters, digits and underscores
 * @param file where it lies
 * @param firstFrame the number of its first frame in the timecode that it carries, or in the time of day
 * @param frames how many frames it has
 * @param picture its moving picture, if it has one
 * @param sounding whether it has sound
 * @param placement where the take lies in it
 */
public record Media(
        String reel,
        Path file,
        long firstFrame,
        long frames,
        Optional<Footage.Picture> picture,
        boolean sounding,
        Placement placement) {
    /** The file's name without its folder. */
    public String name() {
        return String.valueOf(file.getFileName());
    }

    /** Whether a session time of a take lies in it. */
    public boolean covers(int take, StreamTime time) {
        return placement.take() == take && placement.covers(time);
    }
}
