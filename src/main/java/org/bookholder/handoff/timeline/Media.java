package org.bookholder.handoff.timeline;

import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.footage.Channels;
import org.bookholder.footage.Footage;
import org.bookholder.footage.Placement;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;

/**
 * A file in which a take, or part of one, can be seen or heard.
 *
 * @param kind what made it
 * @param reel a short name for it: up to eight capital letters, digits and underscores
 * @param file path of the file
 * @param firstFrame the number of its first frame, by its own timecode or by the time of day
 * @param frames how many frames it has
 * @param picture its moving picture, if it has one
 * @param channels how many channels of sound it has, 0 if none
 * @param placement position of the take in it
 * @param rank its place among the sounds of the take, from 0; the least is heard where it has the take
 * @param heard the channels that are heard; empty if nobody has measured or chosen them
 */
public record Media(
        Kind kind,
        String reel,
        Path file,
        long firstFrame,
        long frames,
        Optional<Footage.Picture> picture,
        int channels,
        Placement placement,
        int rank,
        Optional<Channels> heard) {
    /** What makes such files, the best sound first. */
    public enum Kind {
        /** A sound recorder. */
        RECORDER(0),
        /** A camera: picture, mostly with sound. */
        CAMERA(1),
        /** The session's own recording of a take. */
        TAKE(2);

        private final int rank;

        Kind(int rank) {
            this.rank = rank;
        }

        /** Its place among the sounds of a take, unless another one is preferred. */
        int rank() {
            return rank;
        }
    }

    /** The file's name without its folder. */
    public String name() {
        return String.valueOf(file.getFileName());
    }

    /** The session time that a frame of it begins at; the session's start if that lies before it. */
    StreamTime sessionTime(long frame, FrameRate rate) {
        long ticks = rate.ticksAt(frame - firstFrame);
        long guess = placement.takeStart().ticks() + ticks - placement.start();
        long late = placement.inFile(new StreamTime(Math.max(0, guess))) - ticks;
        return new StreamTime(Math.max(0, guess - late));
    }

    /** The same with its sound at another place among those of the take. */
    Media ranked(int place, Optional<Channels> of) {
        return new Media(kind, reel, file, firstFrame, frames, picture, channels, placement, place, of);
    }

    /** Some of its channels in a word, where it has several and not all are heard; empty otherwise. */
    public Optional<String> channelsHeard() {
        return heard.filter(some -> channels > 1 && some.first() > 0).map(Channels::text);
    }

    /** Whether it has sound. */
    public boolean sounding() {
        return channels > 0;
    }

    /** Whether it covers a session time of a take. */
    public boolean covers(int take, StreamTime time) {
        return placement.take() == take && placement.covers(time);
    }
}
