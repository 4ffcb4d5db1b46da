package org.bookholder.bench;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.Predicate;
import org.bookholder.sound.RoomNoise;
import org.bookholder.sound.SoundCheck;
import org.bookholder.sound.SoundFinding.Grade;
import org.bookholder.sound.SoundFinding.Kind;
import org.bookholder.speech.Biquad;

/** What can be wrong before a recording: faults of room, microphone and cable, planted in a voice of 48 kHz. */
enum CheckedFault {
    NONE(check -> false, sound -> {}),
    /** No fault: a furnished room. */
    FURNISHED(check -> false, sound -> sound.echoes(0.3, 5)),
    /** No fault: twice as much room as voice, which such a room bears. */
    FURNISHED_FAR(check -> false, sound -> sound.echoes(0.4, 0)),
    /** No fault: two microphones of one recorder, two hundredths of a millisecond apart. */
    TWO_CHANNELS(check -> false, sound -> sound.right = Arrays.copyOf(shifted(sound.left, 1), sound.left.length)),
    OPPOSED(has(Kind.SIDES_OPPOSED), sound -> sound.right = scaled(sound.left, -1)),
    OPPOSED_SOFTER(has(Kind.SIDES_OPPOSED), sound -> sound.right = scaled(sound.left, -0.6)),
    LEFT_ONLY(has(Kind.ONE_SIDE), sound -> sound.right = scaled(sound.left, 0.001)),
    RIGHT_ONLY(has(Kind.ONE_SIDE), sound -> {
        sound.right = sound.left;
        sound.left = scaled(sound.left, 0.001);
    }),
    TELEPHONE(has(Kind.NARROW), sound -> sound.upTo(3400)),
    WIDE_CALL(has(Kind.NARROW), sound -> sound.upTo(7000)),
    ECHO_800_MS(has(Kind.ECHO), sound -> sound.echoes(0.8, 0)),
    ECHO_1200_MS(has(Kind.ECHO), sound -> sound.echoes(1.2, 0)),
    ECHO_1200_MS_NEARER(has(Kind.ECHO), sound -> sound.echoes(1.2, 5)),
    ECHO_2000_MS(has(Kind.ECHO), sound -> sound.echoes(2, 0)),
    TOO_LOW(has(Kind.LEVEL_TOO_LOW), sound -> sound.left = scaled(sound.left, Math.pow(10, -18 / 20.0))),
    TOO_HIGH(has(Kind.LEVEL_TOO_HIGH), sound -> sound.left = scaled(sound.left, Math.pow(10, 8.5 / 20.0))),
    HUM_50(named(RoomNoise.Kind.HUM), sound -> sound.tones(-58, 50, 100, 150, 250)),
    HUM_60(named(RoomNoise.Kind.HUM), sound -> sound.tones(-58, 60, 120, 180)),
    FRIDGE(named(RoomNoise.Kind.TONE), sound -> sound.tones(-58, 237)),
    CHARGER(named(RoomNoise.Kind.TONE), sound -> sound.tones(-62, 7300)),
    FAN(named(RoomNoise.Kind.LOW), sound -> sound.noise(-55, Biquad.lowPass(150, 0.7, PlantedFaults.RATE))),
    HISS(named(RoomNoise.Kind.HISS), sound -> sound.noise(-57, new Biquad(1, 0, 0, 0, 0)));

    @SuppressWarnings("ImmutableEnumChecker") // the functions hold nothing
    private final Predicate<SoundCheck> found;

    @SuppressWarnings("ImmutableEnumChecker")
    private final Fault fault;

    private interface Fault {
        void plant(Sound sound);
    }

    /** The voice after its room, at first the same on both sides. */
    static final class Sound {
        float[] left;
        float[] right = new float[0];
        private final int voiceFrom;

        Sound(float[] roomAndVoice, int voiceFrom) {
            left = roomAndVoice;
            this.voiceFrom = voiceFrom;
        }

        /** One or two channels. */
        List<float[]> channels() {
            return right.length == 0 ? List.of(left) : List.of(left, right);
        }

        private void echoes(double seconds, double direct) {
            echoes(new MadeRoom(seconds, direct));
        }

        void echoes(MadeRoom room) {
            float[] voice = Arrays.copyOfRange(left, voiceFrom, left.length);
            float[] heard = room.heard(voice, PlantedFaults.RATE, 7);
            heard = scaled(heard, highest(voice) / highest(heard));
            System.arraycopy(heard, 0, left, voiceFrom, heard.length);
        }

        private void upTo(double hertz) {
            for (int pass = 0; pass < 6; pass++) {
                Biquad filter = Biquad.lowPass(hertz, 0.7, PlantedFaults.RATE);
                for (int i = 0; i < left.length; i++) {
                    left[i] = (float) filter.pass(left[i]);
                }
            }
            left = scaled(left, 0.355 / highest(left));
        }

        private void tones(double level, double... hertz) {
            double amplitude = Math.pow(10, level / 20) * Math.sqrt(2);
            for (int i = 0; i < left.length; i++) {
                for (double tone : hertz) {
                    left[i] += (float) (amplitude * Math.sin(2 * Math.PI * tone * i / PlantedFaults.RATE));
                }
            }
        }

        private void noise(double level, Biquad filter) {
            Random random = new Random(11);
            double[] noise = new double[left.length];
            double power = 0;
            for (int i = 0; i < noise.length; i++) {
                noise[i] = filter.pass(random.nextGaussian());
                power += noise[i] * noise[i] / noise.length;
            }
            for (int i = 0; i < noise.length; i++) {
                left[i] += (float) (Math.pow(10, level / 20) * noise[i] / Math.sqrt(power));
            }
        }
    }

    CheckedFault(Predicate<SoundCheck> found, Fault fault) {
        this.found = found;
        this.fault = fault;
    }

    /** Whether there is nothing to be found. */
    boolean clean() {
        return name().startsWith("NONE") || name().startsWith("FURNISHED") || this == TWO_CHANNELS;
    }

    boolean found(SoundCheck check) {
        return found.test(check);
    }

    List<float[]> plant(float[] roomAndVoice, int voiceFrom) {
        Sound sound = new Sound(roomAndVoice.clone(), voiceFrom);
        fault.plant(sound);
        return sound.channels();
    }

    private static Predicate<SoundCheck> has(Kind kind) {
        return check -> check.findings().stream().anyMatch(f -> f.kind() == kind && f.grade() != Grade.GOOD);
    }

    private static Predicate<SoundCheck> named(RoomNoise.Kind kind) {
        return check -> !check.spectrum().parts().isEmpty()
                && check.spectrum().parts().get(0).kind() == kind;
    }

    private static float[] scaled(float[] samples, double factor) {
        float[] scaled = samples.clone();
        for (int i = 0; i < scaled.length; i++) {
            scaled[i] *= (float) factor;
        }
        return scaled;
    }

    private static float[] shifted(float[] samples, int by) {
        float[] shifted = new float[samples.length];
        System.arraycopy(samples, 0, shifted, by, samples.length - by);
        return shifted;
    }

    private static double highest(float[] samples) {
        double highest = 0;
        for (float sample : samples) {
            highest = Math.max(highest, Math.abs(sample));
        }
        return highest;
    }
}
