package org.bookholder.speech;

import org.bookholder.timing.StreamTime;

/**
 * A run of samples of one channel, 16 bit.
 *
 * <p>The array is not copied: a caller must not change it after handing it over, and readers must not change it at all.
 */
public final class AudioBlock {
    private final StreamTime start;
    private final int rate;
    private final short[] samples;

    /**
     * Creates a block.
     *
     * @param start time of the first sample
     * @param rate samples per second
     * @param samples the samples, not empty
     */
    public AudioBlock(StreamTime start, int rate, short[] samples) {
        if (rate <= 0) {
            throw new IllegalArgumentException("rate (" + rate + ") must be positive");
        }
        if (samples.length == 0) {
            throw new IllegalArgumentException("samples must not be empty");
        }
        this.start = start;
        this.rate = rate;
        this.samples = samples;
    }

    /** The time of the first sample. */
    public StreamTime start() {
        return start;
    }

    /** The time at which the last sample ends. */
    public StreamTime end() {
        return start.plus(StreamTime.ofSamples(samples.length, rate));
    }

    /** Samples per second. */
    public int rate() {
        return rate;
    }

    /** The samples themselves; read only. */
    public short[] samples() {
        return samples;
    }

    /** The same samples moved later by {@code offset}: converts the source's time to the session's time. */
    public AudioBlock later(StreamTime offset) {
        return new AudioBlock(start.plus(offset), rate, samples);
    }
}
