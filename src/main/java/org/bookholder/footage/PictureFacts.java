package org.bookholder.footage;

/**
 * How a camera's picture is stored, as far as that matters for showing it as it was meant.
 *
 * @param width of the picture as shown: turned upright and with square pixels
 * @param height likewise
 * @param interlaced whether it is stored in fields
 * @param light how its brightness is coded
 * @param matrix the coefficients with which its colours are coded, as FFmpeg calls them; "unknown" if the file does not say
 * @param delay how long after the file's own beginning its first picture is due, in ticks of {@link
 *     org.bookholder.timing.StreamTime}
 * @param indexed whether the file says where in it each moment lies; in a transport stream that can only be guessed
 */
public record PictureFacts(
        int width, int height, boolean interlaced, Light light, String matrix, long delay, boolean indexed) {
    /** How brightness is coded. */
    public enum Light {
        /** For screens of usual brightness. */
        STANDARD,
        /** Hybrid log-gamma (ITU-R BT.2100). */
        HLG,
        /** Perceptual quantisation (SMPTE ST 2084, ITU-R BT.2100). */
        PQ
    }

    /** Checks the size. */
    public PictureFacts {
        if (width < 1 || height < 1) {
            throw new IllegalArgumentException("size (" + width + " by " + height + ") must be positive");
        }
    }
}
