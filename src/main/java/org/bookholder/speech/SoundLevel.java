package org.bookholder.speech;

import org.bookholder.timing.StreamTime;

/**
 * The level of one second of sound.
 *
 * @param end when the second ends
 * @param rms root mean square in dBFS: a full-scale square wave is 0, a full-scale sine -3.01; {@value #SILENCE} for
 *     digital silence
 * @param peak the sample farthest from zero, in dBFS, likewise
 * @param clipped samples at full scale in runs of three or more
 */
public record SoundLevel(StreamTime end, double rms, double peak, int clipped) {
    /** The level of digital silence, in dBFS; lower than any level that 16 bits can represent. */
    public static final double SILENCE = -120;
}
