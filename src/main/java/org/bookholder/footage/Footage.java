package org.bookholder.footage;

import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;

/**
 * A camera's or recorder's file.
 *
 * @param file where it lies
 * @param length how long it lasts
 * @param picture its moving picture, if it has one; one without width or height counts as none, since nothing can be shown or
 *     framed of it
 * @param sound its sound, if it has some
 * @param timecode the label of its first frame, as the camera wrote it, if it did
 * @param sinceMidnight the time of day of its first sample, as a recorder wrote it into a Broadcast WAV, if it did
 * @param recorded when it was begun, as the camera wrote it, if it did
 */
public record Footage(
        Path file,
        StreamTime length,
        Optional<Picture> picture,
        Optional<Sound> sound,
        Optional<String> timecode,
        Optional<StreamTime> sinceMidnight,
        Optional<Instant> recorded) {
    /** Leaves out a picture without a size; notes that were kept earlier may hold one. */
    public Footage {
        picture = picture.filter(Picture::sized);
    }

    /**
     * A moving picture.
     *
     * @param width in pixels as shown
     * @param height likewise
     * @param rate pictures a second; the nearest standard rate if there is one
     * @param variable whether the frame rate varies, so that a frame's number does not give its time
     */
    public record Picture(int width, int height, FrameRate rate, boolean variable) {
        private boolean sized() {
            return width > 0 && height > 0;
        }
    }

    /**
     * Sound.
     *
     * @param rate samples a second
     * @param channels how many
     * @param codec how it is stored, as FFmpeg calls it
     */
    public record Sound(int rate, int channels, String codec) {}

    /** The file's name without its folder. */
    public String name() {
        return String.valueOf(file.getFileName());
    }
}
