package org.bookholder.handoff.timeline;

import java.util.List;
import java.util.Optional;
import org.bookholder.timing.StreamTime;
import org.bookholder.timing.Timecode;

/**
 * Finds moments of a session in its files.
 *
 * @param timecode how frames are counted
 * @param media the files; if several contain the same moment, the first one is used
 */
public record MediaLocator(Timecode timecode, List<Media> media) {
    /** Copies the list. */
    public MediaLocator {
        media = List.copyOf(media);
    }

    /**
     * A place in a file.
     *
     * @param media the file
     * @param timecode the label of the frame
     */
    public record Place(Media media, String timecode) {}

    /** Where a session time of a take is found; empty if no file contains it. */
    public Optional<Place> of(int take, StreamTime time) {
        return media.stream().filter(m -> m.covers(take, time)).findFirst().map(m -> {
            long frame = Math.max(0, timecode.rate().frameAt(m.placement().inFile(time)));
            return new Place(m, timecode.label(m.firstFrame() + frame));
        });
    }
}
