package org.bookholder.handoff.timeline;

import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.footage.Footage;
import org.bookholder.footage.Placement;
import org.bookholder.timing.StreamTime;

/**
 * A file in which a take, or part of one, can be seen or heard.
 *
 * @param reel a short name for it: up to eight capital letters, digits and underscores
 * @param file path of the file
 * @param firstFrame the number of its first frame, by its own timecode or by the time of day
 * @param frames how many frames it has
 * @param picture its moving picture, if it has one
 * @param sounding whether it has sound
 * @param placement position of the take in it
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

    /** Whether it covers a session time of a take. */
    public boolean covers(int take, StreamTime time) {
        return placement.take() == take && placement.covers(time);
    }
}
