package org.bookholder.sound;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What lies between a voice and the program: the room, the microphone and its cable.
 *
 * @param sides how the two channels go together
 * @param limit the frequency in Hz above which nothing comes through; empty if the whole voice does
 * @param echo how long the room goes on after a word, as reverberation time in seconds; empty if it could not be judged
 * @param other that the microphone is not the one that was chosen; empty if it is
 */
public record SoundPath(Sides.Kind sides, OptionalInt limit, OptionalDouble echo, Optional<OtherMicrophone> other) {
    /** A path of which nothing is to be said. */
    public static final SoundPath PLAIN =
            new SoundPath(Sides.Kind.BOTH, OptionalInt.empty(), OptionalDouble.empty(), Optional.empty());

    /**
     * A microphone that is not the one that was chosen.
     *
     * @param heard the one that is heard
     * @param chosen the one that was chosen for this machine
     */
    public record OtherMicrophone(String heard, String chosen) {}

    static SoundPath of(Sides.Kind sides, float[] room, float[] voice, int rate) {
        VoiceBand band = new VoiceBand(rate);
        for (float sample : voice) {
            band.hear(sample);
        }
        return new SoundPath(sides, band.limit(), Reverberation.seconds(room, voice, rate), Optional.empty());
    }

    SoundPath with(OtherMicrophone microphone) {
        return new SoundPath(sides, limit, echo, Optional.of(microphone));
    }
}
