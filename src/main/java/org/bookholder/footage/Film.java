package org.bookholder.footage;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;

/**
 * A finished film, as its file describes it.
 *
 * @param file where it lies
 * @param bytes how large it is
 * @param container the kind of file: mp4, mov, mkv, wav, or as FFmpeg calls it
 * @param length its length according to the file
 * @param picture its moving picture, if it has one
 * @param sound its sound, if it has some
 */
public record Film(
        Path file, long bytes, String container, StreamTime length, Optional<Picture> picture, Optional<Sound> sound) {
    /**
     * A moving picture.
     *
     * @param codec how it is stored, as FFmpeg calls it
     * @param pixels how a pixel is stored, as FFmpeg calls it
     * @param width in pixels, as players show it: turned if the file says so
     * @param height in pixels, likewise
     * @param shape width to height as shown
     * @param interlaced whether it is stored in fields
     * @param rate pictures a second
     * @param variable whether the frame rate varies
     * @param bitRate bits a second; 0 if not known
     */
    public record Picture(
            String codec,
            String pixels,
            int width,
            int height,
            double shape,
            boolean interlaced,
            FrameRate rate,
            boolean variable,
            long bitRate) {}

    /**
     * Sound.
     *
     * @param codec how it is stored, as FFmpeg calls it
     * @param rate samples a second
     * @param channels how many
     * @param bitRate bits a second; 0 if not known
     * @param weights how much each channel counts for loudness, by ITU-R BS.1770-4
     */
    public record Sound(String codec, int rate, int channels, long bitRate, List<Double> weights) {
        /** Copies the list. */
        public Sound {
            weights = List.copyOf(weights);
        }
    }

    /** The file's name without its folder. */
    public String name() {
        return String.valueOf(file.getFileName());
    }

    /** Takes in what a film holds, in the order in which it is stored. Confined to one thread. */
    public interface Viewer {
        /** Width of the pictures that are seen. */
        int WIDTH = 240;

        /** Height of the pictures that are seen. */
        int HEIGHT = 135;

        /** Columns of the colours of a picture. */
        int COLUMNS = 128;

        /** Rows of the colours of a picture. */
        int ROWS = 72;

        /**
         * A picture.
         *
         * @param at when it is shown
         * @param luma brightness of {@value #WIDTH} by {@value #HEIGHT} of its pixels, spread evenly, row by row: 0 is
         *     black, 255 white, unsigned; the viewer may keep it
         * @param colours the means of {@value #COLUMNS} by {@value #ROWS} equal parts of it, row by row: red, green and
         *     blue of sRGB, unsigned; used again for the next picture
         */
        void picture(StreamTime at, byte[] luma, byte[] colours);

        /**
         * Sound.
         *
         * @param at when its first sample is heard
         * @param channels samples of each channel; full scale is 1
         */
        void sound(StreamTime at, float[][] channels);
    }
}
