package org.bookholder.app.footage;

import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.app.environment.Interruption;
import org.bookholder.footage.ChannelPowers;
import org.bookholder.footage.SoundTrack;
import org.bookholder.footage.StoredTrack;
import org.bookholder.footage.ffmpeg.FootageSound;
import org.bookholder.problem.ProblemException;

/**
 * A file's sound, gone through once.
 *
 * @param mix all its channels mixed, in a temporary file
 * @param powers how loud its channels are
 */
record EachChannel(StoredTrack mix, ChannelPowers powers) {
    static EachChannel of(Path file, Interruption stop) throws ProblemException {
        try (FootageSound sound = FootageSound.openEach(file, SoundTrack.RATE)) {
            Optional<short[]> first = sound.read();
            ChannelPowers powers = new ChannelPowers(sound.width());
            Reader reader = new Reader(sound, powers, first);
            StoredTrack mix = StoredTrack.of(() -> {
                stop.check();
                return reader.next();
            });
            return new EachChannel(mix, powers);
        }
    }

    /** Gives the mix piece by piece, and measures each channel meanwhile. */
    private static final class Reader {
        private final FootageSound sound;
        private final ChannelPowers powers;
        private Optional<short[]> waiting;

        Reader(FootageSound sound, ChannelPowers powers, Optional<short[]> first) {
            this.sound = sound;
            this.powers = powers;
            waiting = first;
        }

        Optional<short[]> next() throws ProblemException {
            Optional<short[]> piece = waiting;
            if (piece.isEmpty()) {
                return piece;
            }
            powers.add(piece.get());
            waiting = sound.read();
            return Optional.of(mixed(piece.get()));
        }

        private short[] mixed(short[] samples) {
            int width = sound.width();
            short[] mix = new short[samples.length / width];
            for (int i = 0; i < mix.length; i++) {
                int sum = 0;
                for (int channel = 0; channel < width; channel++) {
                    sum += samples[i * width + channel];
                }
                mix[i] = (short) Math.round((float) sum / width);
            }
            return mix;
        }
    }
}
