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
        int done = 0;
        while (done < samples.length) {
            int at = (int) (count % ring.length);
            int piece = Math.min(samples.length - done, ring.length - at);
            System.arraycopy(samples, done, ring, at, piece);
            done += piece;
            count += piece;
        }
    }

    /** Takes the samples from {@code first} on back out of the stream: they are about to be added again. */
    short[] takeBack(long first) {
        if (first > count || count - first > ring.length) {
            throw new IllegalArgumentException(
                    "first (" + first + ") must be among the last " + ring.length + " samples of " + count);
        }
        short[] samples = new short[(int) (count - first)];
        int from = (int) (first % ring.length);
        int atEnd = Math.min(samples.length, ring.length - from);
        System.arraycopy(ring, from, samples, 0, atEnd);
        System.arraycopy(ring, 0, samples, atEnd, samples.length - atEnd);
        count = first;
        return samples;
    }
}
