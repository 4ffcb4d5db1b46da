package org.bookholder.runtime.source;

import java.util.function.LongSupplier;
import org.bookholder.speech.AudioRead;
import org.bookholder.speech.AudioSource;
import org.bookholder.timing.StreamTime;
import org.jspecify.annotations.Nullable;

/** Plays a file in real time: delivers each block when its last sample would have sounded. Confined to one thread. */
public final class PacedSource implements AudioSource {
    private static final double NANOS_PER_TICK = 1e9 / StreamTime.TICKS_PER_SECOND;

    private final AudioSource source;
    private final LongSupplier nanoTime;
    private @Nullable AudioRead next;
    private boolean begun;
    private long beginning;

    /**
     * Paces {@code source}; time begins with the first {@link #read()}.
     *
     * @param nanoTime a monotonic clock in nanoseconds
     */
    public PacedSource(AudioSource source, LongSupplier nanoTime) {
        this.source = source;
        this.nanoTime = nanoTime;
    }

    @Override
    public String name() {
        return source.name();
    }

    @Override
    public int rate() {
        return source.rate();
    }

    @Override
    public AudioRead read() {
        if (!begun) {
            beginning = nanoTime.getAsLong();
            begun = true;
        }
        AudioRead read = next == null ? source.read() : next;
        if (read instanceof AudioRead.Samples samples
                && !sounded(samples.block().end())) {
            next = read;
            return new AudioRead.NothingYet();
        }
        next = null;
        return read;
    }

    @Override
    public void close() {
        source.close();
    }

    private boolean sounded(StreamTime end) {
        return nanoTime.getAsLong() - beginning >= (long) (end.ticks() * NANOS_PER_TICK);
    }
}
