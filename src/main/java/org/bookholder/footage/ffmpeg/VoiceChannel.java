package org.bookholder.footage.ffmpeg;

import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.footage.ChannelChooser;
import org.bookholder.footage.ChannelPowers;
import org.bookholder.footage.Channels;
import org.bookholder.footage.SoundTrack;
import org.bookholder.problem.ProblemException;

/** Which channels of a file a voice is followed by, judged by its first minutes. */
public final class VoiceChannel {
    private static final int FRAMES = 180 * SoundTrack.RATE / ChannelPowers.FRAME;

    private VoiceChannel() {}

    /**
     * The channels to follow.
     *
     * @throws ProblemException if there is no sound, or it can't be decoded
     */
    public static Channels of(Path file) throws ProblemException {
        return ChannelChooser.best(powers(file));
    }

    /** How loud the channels are in the first minutes. */
    static ChannelPowers powers(Path file) throws ProblemException {
        try (FootageSound sound = FootageSound.openEach(file, SoundTrack.RATE)) {
            Optional<short[]> piece = sound.read();
            ChannelPowers powers = new ChannelPowers(sound.width());
            while (piece.isPresent() && sound.width() > 1 && powers.frames() < FRAMES) {
                powers.add(piece.get());
                piece = sound.read();
            }
            return powers;
        }
    }
}
