package org.bookholder.runtime.source;

import java.util.function.LongSupplier;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.AudioRead;
import org.bookholder.speech.AudioSource;
import org.bookholder.timing.StreamTime;

/**
 * Digital silence in real time. It keeps a session's time running if there is no microphone, or none at the moment.
 * Confined to one thread.
 */
public final class SilentSource implements AudioSource {
    /** Sample rate in Hz; silence needs no more. */
    static final int RATE = 16_000;

    private static final int BLOCKS_PER_SECOND = 25;

    private final int rate;
    private final LongSupplier nanoTime;
    private final long beginning;
    private long blocks;

    public SilentSource(int rate, LongSupplier nanoTime) {
        this.rate = rate;
        this.nanoTime = nanoTime;
        this.beginning = nanoTime.getAsLong();
    }

    @Override
    public String name() {
        return "";
    }

    @Override
    public int rate() {
        return rate;
    }

    @Override
    public AudioRead read() {
        long passed = nanoTime.getAsLong() - beginning;
        if (passed < (blocks + 1) * (1_000_000_000L / BLOCKS_PER_SECOND)) {
            return new AudioRead.NothingYet();
        }
        int samples = rate / BLOCKS_PER_SECOND;
        StreamTime start = StreamTime.ofSamples(blocks * samples, rate);
        blocks++;
        return new AudioRead.Samples(new AudioBlock(start, rate, new short[samples]));
    }

    @Override
    public void close() {
        // nothing to release
    }
}
