package org.bookholder.speech;

import java.util.List;
import org.bookholder.timing.StreamTime;

/**
 * A run of samples of one channel, 16 bit; a source that was asked for it keeps the two channels that were mixed to it.
 *
 * <p>The array is not copied: a caller must not change it after handing it over, and readers must not change it at all.
 */
public final class AudioBlock {
    private final StreamTime start;
    private final int rate;
    private final short[] samples;
    private final List<short[]> sides;

    /**
     * Creates a block.
     *
     * @param start time of the first sample
     * @param rate samples per second
     * @param samples the samples, not empty
     */
    public AudioBlock(StreamTime start, int rate, short[] samples) {
        this(start, rate, samples, List.of());
    }

    private AudioBlock(StreamTime start, int rate, short[] samples, List<short[]> sides) {
        if (rate <= 0) {
            throw new IllegalArgumentException("rate (" + rate + ") must be positive");
        }
        if (samples.length == 0) {
            throw new IllegalArgumentException("samples must not be empty");
        }
        this.start = start;
        this.rate = rate;
        this.samples = samples;
        this.sides = sides;
    }

    /**
     * Mixes two channels in equal parts, and keeps both.
     *
     * @param start time of the first sample
     * @param rate samples per second
     * @param left samples of the left channel, not empty
     * @param right as many of the right one
     */
    public static AudioBlock ofSides(StreamTime start, int rate, short[] left, short[] right) {
        short[] mixed = new short[left.length];
        for (int i = 0; i < mixed.length; i++) {
            mixed[i] = (short) ((left[i] + right[i]) >> 1);
        }
        return new AudioBlock(start, rate, mixed, List.of(left, right));
    }

    /** The samples of the left and of the right channel if they were kept; otherwise empty. Read only. */
    public List<short[]> sides() {
        return sides;
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
        return new AudioBlock(start.plus(offset), rate, samples, sides);
    }
}
