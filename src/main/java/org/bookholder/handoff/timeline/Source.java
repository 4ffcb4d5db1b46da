package org.bookholder.handoff.timeline;

/**
 * Frames of a file.
 *
 * @param media the file
 * @param in number of the first frame, in the file's timecode
 * @param out number of the frame after the last
 */
public record Source(Media media, long in, long out) {
    /** How many frames the file has before it. */
    public long before() {
        return in - media.firstFrame();
    }

    /** How many frames the file has after it. */
    public long after() {
        return media.firstFrame() + media.frames() - out;
    }
}
