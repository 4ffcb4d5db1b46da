package org.bookholder.speech;

import org.bookholder.timing.StreamTime;

/**
 * The levels of consecutive short frames.
 *
 * <p>The array is not copied: a caller must not change it after handing it over, and readers must not change it at all.
 *
 * @param start when the first frame begins
 * @param decibels root mean square of each frame of 1/{@value #PER_SECOND} s about its mean, in dBFS (a full-scale
 *     square wave is 0), rounded; {@value #SILENCE} for digital silence
 */
@SuppressWarnings("ArrayRecordComponent") // compared by nobody
public record FrameLevels(StreamTime start, byte[] decibels) {
    /** Frames in one second. */
    public static final int PER_SECOND = 100;

    /** The level of digital silence, in dBFS; lower than any level that 16 bits can represent. */
    public static final byte SILENCE = -120;

    /** When the last frame ends. */
    public StreamTime end() {
        return start.plus(StreamTime.ofSamples(decibels.length, PER_SECOND));
    }
}
