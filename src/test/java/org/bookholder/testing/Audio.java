package org.bookholder.testing;

import org.bookholder.speech.AudioBlock;
import org.bookholder.timing.StreamTime;

/** Audio whose every sample tells its own place, so that a test sees what is missing or moved. */
public final class Audio {
    private Audio() {}

    /** The sample that stands at {@code index}: never 0, so that it differs from silence. */
    public static short sample(long index) {
        return (short) (1 + index % 30_011);
    }

    /** Samples {@code from} (counted from the take's start) and the {@code count - 1} after it. */
    public static AudioBlock block(StreamTime takeStart, int rate, long from, int count) {
        short[] samples = new short[count];
        for (int i = 0; i < count; i++) {
            samples[i] = sample(from + i);
        }
        return new AudioBlock(takeStart.plus(StreamTime.ofSamples(from, rate)), rate, samples);
    }
}
