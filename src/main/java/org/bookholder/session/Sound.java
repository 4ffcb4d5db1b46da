package org.bookholder.session;

import org.bookholder.timing.StreamTime;

/**
 * The sound of the last second.
 *
 * @param rms root mean square in dBFS
 * @param peak peak level in dBFS
 * @param clipped number of samples at full scale in runs of three or more, in the session so far
 * @param lost audio lost during capture, in the session so far
 */
public record Sound(double rms, double peak, long clipped, StreamTime lost) {
    /** The level of digital silence, in dBFS. */
    private static final double SILENCE = -120;

    static final Sound NONE = new Sound(SILENCE, SILENCE, 0, StreamTime.ZERO);

    Sound after(SessionEvent.SoundMeasured second) {
        return new Sound(second.rms(), second.peak(), clipped + second.clipped(), lost);
    }

    Sound without(StreamTime length) {
        return new Sound(rms, peak, clipped, lost.plus(length));
    }
}
