package org.bookholder.handoff.timeline;

import java.util.Optional;
import org.bookholder.cutlist.CutItem;

/**
 * One piece of a timeline: a clip, a gap, or part of a clip if its file ends in the middle of it.
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
    /** The same with this framing. */
    TimelineEvent framed(int percent) {
        return new TimelineEvent(item, source, in, out, opens, closes, percent);
    }

    /** Its length in frames. */
    public long frames() {
        return out - in;
    }
}
