package org.bookholder.footage.ffmpeg;

import java.util.Arrays;
import java.util.Optional;
import org.bookholder.footage.ChannelChooser;
import org.bookholder.footage.ChannelPowers;
import org.bookholder.footage.Hearing;
import org.bookholder.footage.WholeRecording;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.AudioRead;
import org.bookholder.speech.AudioSource;
import org.bookholder.timing.StreamTime;

/** The sound of a recording of a camera or recorder, to be followed as if it were live. Confined to one thread, but for {@link #heard}. */
public final class FootageSource implements AudioSource {
    /** Samples a second: what cameras record, and what a hand-off is wanted in. */
    public static final int RATE = 48_000;

    private static final int BLOCK = RATE / 10;

    private final WholeRecording recording;
    private final JoinedSound sound;
    private final ChannelPowers powers;
    private short[] waiting = new short[0];
    private int taken;
    private boolean ended;
    private boolean closed;
    private long count;

    /** The count, for other threads. */
    private volatile long given;

    private FootageSource(WholeRecording recording, JoinedSound sound, ChannelPowers powers) {
        this.recording = recording;
        this.sound = sound;
        this.powers = powers;
    }

    /**
     * Opens a recording's sound: all its channels together, or those in which a voice is heard best at its beginning.
     *
     * @throws ProblemException if it has none that can be decoded
     */
    public static FootageSource open(WholeRecording recording) throws ProblemException {
        ChannelPowers powers = VoiceChannel.powers(recording.parts().get(0).file());
        JoinedSound sound = new JoinedSound(recording, RATE, ChannelChooser.best(powers));
        return new FootageSource(recording, sound, powers);
    }

    /** How a take is heard in it that was followed by it; by all its channels mixed if that is as good as any. */
    public Hearing hearing(int take) {
        return ChannelChooser.best(powers, take);
    }

    /** How much of it was read so far; may be asked on any thread. */
    public StreamTime heard() {
        return StreamTime.ofSamples(given, RATE);
    }

    @Override
    public String name() {
        return recording.name();
    }

    @Override
    public int rate() {
        return RATE;
    }

    @Override
    public AudioRead read() {
        try {
            while (taken == waiting.length) {
                Optional<short[]> next = ended ? Optional.empty() : sound.read();
                if (next.isEmpty()) {
                    ended = true;
                    return new AudioRead.Ended();
                }
                waiting = next.get();
                taken = 0;
            }
        } catch (ProblemException e) {
            return new AudioRead.Gone(e.getMessage());
        }
        int end = Math.min(waiting.length, taken + BLOCK);
        AudioBlock block =
                new AudioBlock(StreamTime.ofSamples(given, RATE), RATE, Arrays.copyOfRange(waiting, taken, end));
        count += end - taken;
        given = count;
        taken = end;
        return new AudioRead.Samples(block);
    }

    @Override
    public void close() {
        if (!closed) {
            closed = true;
            ended = true;
            waiting = new short[0];
            taken = 0;
            sound.close();
        }
    }
}
