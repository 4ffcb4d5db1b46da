package org.bookholder.testing;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.AudioRead;
import org.bookholder.speech.AudioSource;
import org.bookholder.timing.StreamTime;

/** An audio source that gives what a test has laid out, in order, and then ends. */
public final class FakeAudioSource implements AudioSource {
    private final int rate;
    private final Deque<AudioRead> answers = new ArrayDeque<>();
    private String name = "a fake microphone";
    private boolean closed;
    private long samples;

    public FakeAudioSource(int rate) {
        this.rate = rate;
    }

    /** A source of samples in blocks of 40 ms. */
    public static FakeAudioSource of(int rate, short[] samples) {
        FakeAudioSource source = new FakeAudioSource(rate);
        blocks(rate, StreamTime.ZERO, samples).forEach(source::then);
        return source;
    }

    /** Samples cut into blocks of 40 ms, the first one beginning at {@code start}. */
    public static List<AudioBlock> blocks(int rate, StreamTime start, short[] samples) {
        return blocks(rate, start, rate / 25, samples);
    }

    /** Samples cut into blocks of {@code length} samples, the first one beginning at {@code start}. */
    public static List<AudioBlock> blocks(int rate, StreamTime start, int length, short[] samples) {
        List<AudioBlock> blocks = new ArrayList<>();
        for (int at = 0; at < samples.length; at += length) {
            short[] part = Arrays.copyOfRange(samples, at, Math.min(samples.length, at + length));
            blocks.add(new AudioBlock(start.plus(StreamTime.ofSamples(at, rate)), rate, part));
        }
        return blocks;
    }

    /** Then this block. */
    public FakeAudioSource then(AudioBlock block) {
        samples = block.end().samples(rate);
        return then(new AudioRead.Samples(block));
    }

    /** Then silence. */
    public FakeAudioSource thenSilence(double seconds) {
        short[] silence = new short[(int) Math.round(seconds * rate)];
        blocks(rate, StreamTime.ofSamples(samples, rate), silence).forEach(this::then);
        return this;
    }

    /** Then audio is lost: what follows begins later. */
    public FakeAudioSource thenLoses(double seconds) {
        samples += Math.round(seconds * rate);
        return this;
    }

    /** Then this answer. */
    public FakeAudioSource then(AudioRead answer) {
        answers.add(answer);
        return this;
    }

    /** Gives it another name, as if the system had moved it to another device. */
    public FakeAudioSource named(String other) {
        name = other;
        return this;
    }

    /** Whether it has been closed. */
    public boolean closed() {
        return closed;
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public int rate() {
        return rate;
    }

    @Override
    public AudioRead read() {
        if (closed) {
            throw new IllegalStateException("source is closed");
        }
        AudioRead answer = answers.poll();
        return answer == null ? new AudioRead.Ended() : answer;
    }

    @Override
    public void close() {
        closed = true;
    }
}
