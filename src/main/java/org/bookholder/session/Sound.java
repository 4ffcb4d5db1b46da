package org.bookholder.session;

import java.util.List;
import java.util.stream.Stream;
import org.bookholder.timing.StreamTime;

/**
 * The sound of the last second.
 *
 * @param rms root mean square in dBFS
 * @param peak peak level in dBFS
 * @param clipped number of samples at full scale in runs of three or more, in the session so far
 * @param lost audio lost during capture, in the session so far
 * @param notSaved the stretches of which no audio could be saved, in the order in which they were found
 */
public record Sound(double rms, double peak, long clipped, StreamTime lost, List<UnsavedStretch> notSaved) {
    /** The level of digital silence, in dBFS. */
    private static final double SILENCE = -120;

    static final Sound NONE = new Sound(SILENCE, SILENCE, 0, StreamTime.ZERO);

    /** Copies the list. */
    public Sound {
        notSaved = List.copyOf(notSaved);
    }

    /** Sound that is all saved. */
    public Sound(double rms, double peak, long clipped, StreamTime lost) {
        this(rms, peak, clipped, lost, List.of());
    }

    Sound after(SessionEvent.SoundMeasured second) {
        return new Sound(second.rms(), second.peak(), clipped + second.clipped(), lost, notSaved);
    }

    Sound without(StreamTime length) {
        return new Sound(rms, peak, clipped, lost.plus(length), notSaved);
    }

    Sound notSaved(UnsavedStretch stretch) {
        return new Sound(
                rms,
                peak,
                clipped,
                lost,
                Stream.concat(notSaved.stream(), Stream.of(stretch)).toList());
    }
}
