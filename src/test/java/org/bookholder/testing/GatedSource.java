package org.bookholder.testing;

import org.bookholder.speech.AudioRead;
import org.bookholder.speech.AudioSource;
import org.jspecify.annotations.Nullable;

/** A recording that is read as fast as possible, but no further than the test allows. */
public final class GatedSource implements AudioSource {
    private final AudioSource source;
    private volatile double gate;
    private @Nullable AudioRead held;

    public GatedSource(AudioSource source) {
        this.source = source;
    }

    /** Lets the recording be heard up to {@code seconds}. */
    public void openTo(double seconds) {
        gate = seconds;
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
        AudioRead next = held == null ? source.read() : held;
        if (next instanceof AudioRead.Samples samples && samples.block().end().seconds() > gate) {
            held = next;
            return new AudioRead.NothingYet();
        }
        held = null;
        return next;
    }

    @Override
    public void close() {
        source.close();
    }
}
