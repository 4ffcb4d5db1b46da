package org.bookholder.speech.vosk;

/** The last samples of a stream, so that they can be heard again. */
final class RecentSound {
    private final short[] ring;
    private long count;

    /** Keeps {@code capacity} samples. */
    RecentSound(int capacity) {
        ring = new short[capacity];
    }

    /** How many samples the stream has had. */
    long count() {
        return count;
    }

    void add(short[] samples) {
        for (short sample : samples) {
            ring[(int) (count++ % ring.length)] = sample;
        }
    }

    /** Takes the samples from {@code first} on back out of the stream: they are about to be added again. */
    short[] takeBack(long first) {
        if (first > count || count - first > ring.length) {
            throw new IllegalArgumentException(
                    "first (" + first + ") must be among the last " + ring.length + " samples of " + count);
        }
        short[] samples = new short[(int) (count - first)];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = ring[(int) ((first + i) % ring.length)];
        }
        count = first;
        return samples;
    }
}
