package org.bookholder.footage;

import org.bookholder.timing.StreamTime;

/** Sound with random access: one channel, {@value #RATE} samples a second. */
public interface SoundTrack {
    /** Samples a second: enough for a voice, and an eighth of a millisecond from one to the next. */
    int RATE = 8000;

    /** How many ticks of a {@link StreamTime} a sample lasts. */
    int TICKS = StreamTime.TICKS_PER_SECOND / RATE;

    /** How many samples it has. */
    long length();

    /**
     * A piece of it.
     *
     * @param from number of the first sample; may lie before the beginning
     * @param count how many
     * @return so many samples, within one of zero; zero where there are none
     */
    float[] read(long from, int count);
}
