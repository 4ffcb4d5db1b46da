package org.bookholder.handoff;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import org.bookholder.cutlist.CutList;
import org.bookholder.cutlist.TakeSound;
import org.bookholder.handoff.timeline.CoverMedia;
import org.bookholder.handoff.timeline.Media;
import org.bookholder.handoff.timeline.Timeline;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;

/**
 * The values from which the files of a hand-off are written.
 *
 * @param folder the folder that they are written to
 * @param name the beginning of their names: the lesson in letters, digits and hyphens
 * @param state the state of the session
 * @param events the events it was derived from, in order
 * @param cut which attempts are used, and where they are cut
 * @param timeline the same, counted in frames
 * @param media every file that contains takes or parts of them
 * @param covers the author's own pictures and clips that were found, in the order of the script
 * @param sound the takes' recordings
 * @param zone time zone for times of day
 */
public record HandOff(
        Path folder,
        String name,
        SessionState state,
        List<SessionEvent> events,
        CutList cut,
        Timeline timeline,
        List<Media> media,
        List<CoverMedia> covers,
        TakeSound sound,
        ZoneId zone) {
    /** Copies the lists. */
    public HandOff {
        events = List.copyOf(events);
        media = List.copyOf(media);
        covers = List.copyOf(covers);
    }
}
