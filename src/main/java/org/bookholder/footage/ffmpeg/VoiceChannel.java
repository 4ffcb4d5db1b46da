package org.bookholder.footage.ffmpeg;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalInt;
import org.bookholder.problem.ProblemException;
import org.bookholder.sound.Decibels;

/**
 * Which of a recorder's channels a voice is followed by: the mix of all, unless it is much softer in the mix, as when one side is
 * inverted, or another channel drowns it. A voice is what rises and falls: the loud tenth of the first minutes against the soft one.
 */
final class VoiceChannel {
    private static final int RATE = 8000;
    private static final int FRAME = RATE / 10;
    private static final int SECONDS = 180;

    /** Softer sound is no voice, in dBFS. */
    private static final double SOFTEST = -70;

    /**
     * The mix of several channels is softer than one of them alone, by 20 times the logarithm of their number; where it is softer by this
     * much more, the voice is cancelled, in dB.
     */
    private static final double CANCELLED = 10;

    /** A channel rises further out of its noise than the mix by more than this, in dB. */
    private static final double CLEARER = 6;

    /** A mix in which the voice rises further than this out of its noise is good enough, in dB. */
    private static final double GOOD_ENOUGH = 25;

    /** How a voice stands in a channel or in the mix: its loud tenth in dBFS, and how far that is above the soft one in dB. */
    private record Voice(double loud, double range) {}

    private VoiceChannel() {}

    /**
     * The channel to follow, from 0; empty for the mix of all.
     *
     * @throws ProblemException if there is no sound, or it can't be decoded
     */
    static OptionalInt of(Path file) throws ProblemException {
        int channels;
        Voice mix;
        try (FootageSound all = FootageSound.open(file, RATE)) {
            channels = all.channels();
            if (channels < 2) {
                return OptionalInt.empty();
            }
            mix = voice(all);
        }
        OptionalInt best = OptionalInt.empty();
        Voice clearest = mix;
        double share = 20 * Math.log10(channels);
        for (int channel = 0; channel < channels; channel++) {
            Voice one;
            try (FootageSound alone = FootageSound.open(file, RATE, OptionalInt.of(channel))) {
                one = voice(alone);
            }
            boolean cancelled = mix.loud < one.loud - share - CANCELLED;
            boolean clearer = mix.range < GOOD_ENOUGH && one.range > mix.range + CLEARER;
            if (one.loud > SOFTEST && (cancelled || clearer) && (best.isEmpty() || one.range > clearest.range)) {
                best = OptionalInt.of(channel);
                clearest = one;
            }
        }
        return best;
    }

    private static Voice voice(FootageSound sound) throws ProblemException {
        double[] levels = new double[SECONDS * RATE / FRAME];
        int count = 0;
        double sum = 0;
        int inFrame = 0;
        Optional<short[]> piece = sound.read();
        while (piece.isPresent() && count < levels.length) {
            for (short sample : piece.get()) {
                sum += sample * sample / 1_073_741_824.0;
                if (++inFrame == FRAME && count < levels.length) {
                    levels[count++] = Decibels.ofPower(sum / FRAME);
                    sum = 0;
                    inFrame = 0;
                }
            }
            piece = sound.read();
        }
        if (count == 0) {
            return new Voice(Decibels.SILENCE, 0);
        }
        Arrays.sort(levels, 0, count);
        // Digital silence says nothing of the noise under a voice.
        double loud = levels[count * 9 / 10];
        return new Voice(loud, loud - Math.max(SOFTEST - CANCELLED, levels[count / 10]));
    }
}
