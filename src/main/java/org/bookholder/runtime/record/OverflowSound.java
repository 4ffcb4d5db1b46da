package org.bookholder.runtime.record;

import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.concurrent.atomic.AtomicLong;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioBlock;
import org.bookholder.timing.StreamTime;

/** The stretches of a take's sound that lie in the second place. One thread at a time adds to it, another one may read. */
final class OverflowSound {
    private final int take;
    private final int rate;
    private final StreamTime start;
    private final Overflow overflow;
    /** By their first samples. */
    private final NavigableMap<Long, Stretch> stretches = new ConcurrentSkipListMap<>();

    private record Stretch(long first, Tape tape, AtomicLong length) {
        long end() {
            return first + length.get();
        }
    }

    OverflowSound(int take, int rate, StreamTime start, Overflow overflow) {
        this.take = take;
        this.rate = rate;
        this.start = start;
        this.overflow = overflow;
    }

    /** Adds a block whose first sample is {@code first}, counted from the take's first; tries another place if one is full. */
    void add(long first, AudioBlock block) throws ProblemException {
        Optional<Stretch> open = Optional.ofNullable(stretches.floorEntry(first))
                .map(Map.Entry::getValue)
                .filter(stretch -> stretch.end() == first);
        if (open.isPresent()) {
            try {
                append(open.get(), block);
                return;
            } catch (ProblemException full) {
                open.get().tape().sync();
            }
        }
        Stretch begun = new Stretch(first, overflow.begin(take, rate, start, first), new AtomicLong());
        try {
            append(begun, block);
        } catch (ProblemException full) {
            // It is begun anew each time, so its file must not stay open.
            letGo(begun.tape(), full);
            throw full;
        }
        stretches.put(first, begun);
    }

    private static void letGo(Tape tape, ProblemException because) {
        try {
            tape.close();
        } catch (ProblemException e) {
            because.addSuppressed(e);
        }
        tape.closeReader();
    }

    private static void append(Stretch stretch, AudioBlock block) throws ProblemException {
        stretch.tape().append(block);
        stretch.length().addAndGet(block.samples().length);
    }

    /** Whether nothing is in it. */
    boolean isEmpty() {
        return stretches.isEmpty();
    }

    /** How much is in it. */
    StreamTime length() {
        return StreamTime.ofSamples(
                stretches.values().stream()
                        .mapToLong(stretch -> stretch.length().get())
                        .sum(),
                rate);
    }

    /** Reads from a sample on, at most {@code most}; empty if that sample is not here. */
    Optional<AudioBlock> read(long from, int most) throws ProblemException {
        Map.Entry<Long, Stretch> entry = stretches.floorEntry(from);
        if (entry == null || entry.getValue().end() <= from) {
            return Optional.empty();
        }
        Stretch stretch = entry.getValue();
        return stretch.tape().read(from - stretch.first(), (int) Math.min(most, stretch.end() - from));
    }

    /** The first sample of the next stretch that begins behind a sample. */
    OptionalLong nextAfter(long sample) {
        Long next = stretches.higherKey(sample);
        return next == null ? OptionalLong.empty() : OptionalLong.of(next);
    }

    /** The end of the stretch that holds a sample and of those that follow without a gap; the sample itself if none does. */
    long endFrom(long sample) {
        long end = sample;
        Map.Entry<Long, Stretch> entry = stretches.floorEntry(end);
        while (entry != null && entry.getValue().end() > end) {
            end = entry.getValue().end();
            entry = stretches.floorEntry(end);
        }
        return end;
    }

    /** Makes it safe against loss of power. */
    void sync() throws ProblemException {
        for (Stretch stretch : stretches.values()) {
            stretch.tape().sync();
        }
    }

    /** Ends the writing; it can still be read. */
    void close() throws ProblemException {
        for (Stretch stretch : stretches.values()) {
            stretch.tape().close();
        }
    }

    /** Ends the reading. */
    void closeReader() {
        stretches.values().forEach(stretch -> stretch.tape().closeReader());
    }
}
