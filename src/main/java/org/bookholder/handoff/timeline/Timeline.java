package org.bookholder.handoff.timeline;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.cutlist.Clip;
import org.bookholder.cutlist.CutMarker;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;
import org.bookholder.timing.Timecode;

/**
 * A cut counted in frames.
 *
 * @param timecode how frames are counted and named
 * @param events its pieces, each beginning where the one before ends
 */
public record Timeline(Timecode timecode, List<TimelineEvent> events) {
    /** Copies the list. */
    public Timeline {
        events = List.copyOf(events);
    }

    /** Timelines begin at one hour (common practice), so that something can still be put before them. */
    public long begin() {
        return timecode.frame("01:00:00:00").orElseThrow();
    }

    /** Frames per second. */
    public FrameRate rate() {
        return timecode.rate();
    }

    /** Its length in frames. */
    public long frames() {
        return events.isEmpty() ? 0 : events.get(events.size() - 1).out();
    }

    /** The label of a frame of the timeline, counted from 0. */
    public String label(long frame) {
        return timecode.label(begin() + frame);
    }

    /**
     * The time on the timeline at which a moment of a clip comes.
     *
     * @param clip a clip of this timeline
     * @param time session time
     */
    public StreamTime when(Clip clip, StreamTime time) {
        List<TimelineEvent> pieces =
                events.stream().filter(event -> event.item().equals(clip)).toList();
        if (pieces.isEmpty()) {
            throw new IllegalArgumentException("clip (" + clip + ") must be of this timeline");
        }
        long best = 0;
        for (TimelineEvent piece : pieces) {
            Source source = piece.source().orElseThrow();
            Media media = source.media();
            long inFile = media.placement().inFile(time) - rate().ticksAt(source.before());
            if (piece.opens() || inFile >= 0) {
                best = rate().ticksAt(piece.in()) + inFile;
            }
        }
        return new StreamTime(Math.max(0, best));
    }

    /** The markers of an event: those markers of its item that fall within it. */
    public List<PlacedMarker> markers(TimelineEvent event) {
        List<PlacedMarker> placed = new ArrayList<>();
        for (CutMarker marker : event.item().markers()) {
            long at = frame(event, marker);
            boolean within = at < event.out() || event.closes();
            if (within && (at >= event.in() || event.opens())) {
                placed.add(new PlacedMarker(marker, Math.max(event.in(), Math.min(at, event.out() - 1))));
            }
        }
        return placed;
    }

    private long frame(TimelineEvent event, CutMarker marker) {
        Optional<Clip> clip = event.item().clip();
        StreamTime at = clip.isPresent()
                ? when(clip.get(), clip.get().in().plus(marker.offset()))
                : rate().length(event.in()).plus(marker.offset());
        return rate().frameAt(at.ticks());
    }

    /**
     * A marker and its frame on the timeline.
     *
     * @param marker the marker
     * @param frame counted from 0
     */
    public record PlacedMarker(CutMarker marker, long frame) {}
}
