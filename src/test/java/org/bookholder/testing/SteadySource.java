package org.bookholder.testing;

import java.util.Arrays;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.AudioRead;
import org.bookholder.speech.AudioSource;
import org.bookholder.timing.StreamTime;

/** A microphone with a name that gives a sound of one level for ever: a block of a hundredth of a second at every other read. */
public final class SteadySource implements AudioSource {
    private static final int RATE = 16_000;

    private final String name;
    private final short[] block = new short[RATE / 100];
    private long position;
    private boolean due;
    private volatile boolean closed;

    /** Gives samples of {@code amplitude}, of which full scale is 32,768. */
    public SteadySource(String name, int amplitude) {
        this.name = name;
        Arrays.fill(block, (short) amplitude);
    }

    public boolean closed() {
        return closed;
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public int rate() {
        return RATE;
    }

    @Override
    public AudioRead read() {
        due = !due;
        if (!due) {
            return new AudioRead.NothingYet();
        }
        AudioBlock next = new AudioBlock(StreamTime.ofSamples(position, RATE), RATE, block.clone());
        position += block.length;
        return new AudioRead.Samples(next);
    }

    @Override
    public void close() {
        closed = true;
    }
}
