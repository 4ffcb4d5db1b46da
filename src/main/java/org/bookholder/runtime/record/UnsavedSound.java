package org.bookholder.runtime.record;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import org.bookholder.speech.AudioBlock;
import org.bookholder.timing.StreamTime;

/**
 * The sound of all takes that is not on disk yet, in order, up to a bound. When it is full, the oldest sound makes room for
 * the newest. Safe for use by several threads.
 */
final class UnsavedSound {
    /** So many bytes of samples: 17 minutes at 16 kHz, five and a half at 48 kHz. */
    static final long CAPACITY = 32L << 20;

    private final long capacity;
    /** By their first samples; takes are in the order in which they were rolled. */
    private final Map<RecordedTake, NavigableMap<Long, Piece>> pieces = new LinkedHashMap<>();

    private long bytes;

    /**
     * A block that waits.
     *
     * @param take whose sound it is
     * @param first the block's first sample, counted from the take's first, which is 0
     * @param block the samples
     */
    record Piece(RecordedTake take, long first, AudioBlock block) {
        private long bytes() {
            return (long) block.samples().length * Short.BYTES;
        }

        /** At most {@code most} samples from a sample on that it holds; silence if it begins later. */
        AudioBlock part(long from, int most) {
            int rate = block.rate();
            if (first > from) {
                int silent = (int) Math.min(first - from, most);
                StreamTime start = block.start().since(StreamTime.ofSamples(first - from, rate));
                return new AudioBlock(start, rate, new short[silent]);
            }
            int offset = (int) (from - first);
            int end = Math.min(block.samples().length, offset + most);
            return new AudioBlock(
                    block.start().plus(StreamTime.ofSamples(offset, rate)),
                    rate,
                    Arrays.copyOfRange(block.samples(), offset, end));
        }

        /** The sample behind its last one. */
        long end() {
            return first + block.samples().length;
        }

        private boolean holds(long sample) {
            return first <= sample && sample < end();
        }
    }

    /** Memory for so many bytes of samples. */
    UnsavedSound(long capacity) {
        this.capacity = capacity;
    }

    /** Keeps a block; returns the pieces that were dropped for it because there was no room for all. */
    synchronized List<Piece> add(Piece piece) {
        pieces.computeIfAbsent(piece.take(), take -> new TreeMap<>()).put(piece.first(), piece);
        bytes += piece.bytes();
        List<Piece> dropped = new ArrayList<>();
        while (bytes > capacity) {
            Piece oldest = pieces.values().iterator().next().firstEntry().getValue();
            written(oldest);
            dropped.add(oldest);
        }
        return dropped;
    }

    /** Whether more than half of it is used. */
    synchronized boolean crowded() {
        return bytes > capacity / 2;
    }

    /** All pieces of a take, oldest first. */
    synchronized List<Piece> all(RecordedTake take) {
        return List.copyOf(of(take).values());
    }

    /** The oldest piece of a take; empty if none waits. */
    synchronized Optional<Piece> oldest(RecordedTake take) {
        return Optional.ofNullable(of(take).firstEntry()).map(Map.Entry::getValue);
    }

    /** The piece of a take that holds a sample or, if that was dropped, the next one; empty if nothing so late waits. */
    synchronized Optional<Piece> from(RecordedTake take, long sample) {
        Optional<Piece> before =
                Optional.ofNullable(of(take).floorEntry(sample)).map(Map.Entry::getValue);
        return before.filter(piece -> piece.holds(sample))
                .or(() -> Optional.ofNullable(of(take).higherEntry(sample)).map(Map.Entry::getValue));
    }

    private NavigableMap<Long, Piece> of(RecordedTake take) {
        return pieces.getOrDefault(take, new TreeMap<>());
    }

    /** Forgets a piece that was written. */
    synchronized void written(Piece piece) {
        NavigableMap<Long, Piece> waiting = of(piece.take());
        if (waiting.remove(piece.first()) != null) {
            bytes -= piece.bytes();
        }
        if (waiting.isEmpty()) {
            pieces.remove(piece.take());
        }
    }
}
