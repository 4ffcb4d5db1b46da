package org.bookholder.handoff.timeline;

import java.util.Optional;
import org.bookholder.cutlist.CutItem;

/**
 * One piece of a timeline: a clip or a gap; or a part of a clip, where its file ends in the middle of it.
 *
 * @param item the clip or gap
 * @param source the frames that fill it; empty for a gap
 * @param in number of its first frame on the timeline, from 0
 * @param out number of the frame after its last
 * @param opens whether it is the first piece of its item
 * @param closes whether it is the last piece of its item
 * @param framing how close the picture is framed, in per cent of its full size; 100 is the full picture
 */
public record TimelineEvent(
        CutItem item, Optional<Source> source, long in, long out, boolean opens, boolean closes, int framing) {
    /** The same, framed so. */
    TimelineEvent framed(int percent) {
        return new TimelineEvent(item, source, in, out, opens, closes, percent);
    }

    /** How many frames it lasts. */
    public long frames() {
        return out - in;
    }
}
