package org.bookholder.speech;

import org.bookholder.timing.StreamTime;

/**
 * A run of samples of one channel, 16 bit.
 *
 * <p>Holds its array without copying: whoever hands one over does not write to it again, and readers never do.
 */
public final class AudioBlock {
    private final StreamTime start;
    private final int rate;
    private final short[] samples;

    /**
     * Creates a block.
     *
     * @param start when its first sample sounds
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

    /** When the first sample sounds. */
    public StreamTime start() {
        return start;
    }

    /** When the last sample has sounded. */
    public StreamTime end() {
        return start.plus(StreamTime.ofSamples(samples.length, rate));
    }

    /** Samples per second. */
    public int rate() {
        return rate;
    }

    /** The samples themselves, to read only. */
    public short[] samples() {
        return samples;
    }

    /** The same samples, later by {@code offset}: from the time of a source to the time of a session. */
    public AudioBlock later(StreamTime offset) {
        return new AudioBlock(start.plus(offset), rate, samples);
    }
}
