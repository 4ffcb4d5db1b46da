package org.bookholder.handoff.timeline;

import java.util.List;
import java.util.Optional;

/**
 * What of a cut one source has: a camera with all its files, a recorder, or our own recordings. Its pieces fill the
 * timeline from beginning to end.
 *
 * @param media its files, at least one; no two of them cover the same moment
 * @param pieces its pieces, each beginning where the one before ends
 */
public record SourceTrack(List<Media> media, List<Piece> pieces) {
    /** Copies the lists. */
    public SourceTrack {
        media = List.copyOf(media);
        pieces = List.copyOf(pieces);
    }

    /** The name of its first file. */
    public String name() {
        return media.get(0).name();
    }

    /** What made it. */
    public Media.Kind kind() {
        return media.get(0).kind();
    }

    /** Whether any of its files has sound. */
    public boolean sounding() {
        return media.stream().anyMatch(Media::sounding);
    }

    /**
     * A piece of an event.
     *
     * @param event the event
     * @param source the frames that fill it; empty where the source has nothing
     * @param in number of its first frame on the timeline, from 0
     * @param out number of the frame after its last
     */
    public record Piece(TimelineEvent event, Optional<Source> source, long in, long out) {
        /** Its length in frames. */
        public long frames() {
            return out - in;
        }

        /** The part before a frame of the timeline that lies within it. */
        public Piece until(long frame) {
            return new Piece(event, source.map(s -> new Source(s.media(), s.in(), s.in() + frame - in)), in, frame);
        }

        /** The part from a frame of the timeline on that lies within it. */
        public Piece from(long frame) {
            return new Piece(event, source.map(s -> new Source(s.media(), s.in() + frame - in, s.out())), frame, out);
        }

        /** Whether a frame of the timeline lies in it; the last piece of an event has its end too. */
        public boolean holds(long frame) {
            return frame >= in && (frame < out || (out == event.out() && frame == out));
        }
    }
}
