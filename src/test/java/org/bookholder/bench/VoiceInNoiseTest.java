package org.bookholder.bench;

import static org.assertj.core.api.Assertions.assertThat;

import io.github.givimad.libfvadjni.VoiceActivityDetector;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.bookholder.bench.Truth.Passage;
import org.bookholder.follow.evidence.Loudness;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.FrameLevels;
import org.bookholder.speech.FrameMeter;
import org.bookholder.testing.Needs;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Where a person's voice begins and ends, by levels alone, in rooms with other sounds. No recogniser listens. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Execution(ExecutionMode.CONCURRENT)
final class VoiceInNoiseTest {
    private static final double DECIBELS = 10;
    private static final double NEAR = 0.15;

    /** By how much a recogniser may report the first word late and the last one early, beside the 0.08 s of quiet. */
    private static final double INSIDE = 0.15;

    /** The other detector takes half a minute to get to know a hum; until then it hears voice everywhere. */
    private static final double KNOWN = 40;

    /** How far from ours the detector's bounds are looked for, in hundredths of a second. */
    private static final int REACH = 30;

    private Composition quiet;
    private List<Double> inQuiet;

    /** Sounds as loud as 10 dB below the voice. */
    private enum Room {
        FAN(0.95) {
            @Override
            double[] noise(int samples) {
                return Noise.low(samples, new Random(11));
            }
        },
        HUM(0.95) {
            @Override
            double[] noise(int samples) {
                double[] noise = new double[samples];
                for (int i = 0; i < samples; i++) {
                    for (int harmonic = 1; harmonic <= 5; harmonic++) {
                        noise[i] += Math.sin(2 * Math.PI * 50 * harmonic * i / Sound.RATE + harmonic) / harmonic;
                    }
                }
                return noise;
            }
        },
        FAN_THAT_COMES_AND_GOES(0.85) {
            @Override
            double[] noise(int samples) {
                double[] noise = Noise.low(samples, new Random(12));
                for (int i = 0; i < samples; i++) {
                    noise[i] *= i / (7 * Sound.RATE) % 2 == 0 ? 1 : 0.1;
                }
                return noise;
            }
        };

        /** The share of bounds that must be near. */
        private final double share;

        Room(double share) {
            this.share = share;
        }

        abstract double[] noise(int samples);
    }

    @BeforeAll
    void compose() {
        Needs.file(Recordings.PROMPTS, "Debian packages asterisk-core-sounds-en and asterisk-core-sounds-en-g722");
        quiet = Composer.compose(Recordings.prompts(), 60, Recipe.quick(), 1);
        inQuiet = bounds(quiet, FrameMeter.voiceBand());
    }

    @ParameterizedTest
    @EnumSource
    void boundsInNoiseAreThoseInQuiet(Room room) {
        assertThat(near(inQuiet, bounds(in(room), FrameMeter.voiceBand()))).isGreaterThanOrEqualTo(room.share);
    }

    @Test
    void boundsInQuietAreWhereTheVoiceWasLaid() {
        List<Double> truth = new ArrayList<>();
        for (Passage said : quiet.truth().passages()) {
            truth.add(said.start());
            truth.add(said.end());
        }
        assertThat(near(truth, inQuiet)).isEqualTo(1);
    }

    /** A second opinion that shares nothing with ours: the voice activity detector of WebRTC, at its strictest. */
    @ParameterizedTest
    @EnumSource
    void anotherDetectorFindsTheSameBounds(Room room) throws IOException {
        Composition noisy = in(room);
        List<Double> ours = bounds(noisy, FrameMeter.voiceBand());
        boolean[] voice = detected(noisy.sound());
        List<Double> known = new ArrayList<>();
        List<Double> theirs = new ArrayList<>();
        for (int i = 0; i < ours.size(); i += 2) {
            if (ours.get(i) >= KNOWN) {
                known.add(ours.get(i));
                known.add(ours.get(i + 1));
                theirs.add(first(voice, ours.get(i)));
                theirs.add(last(voice, ours.get(i + 1)));
            }
        }
        assertThat(near(known, theirs)).isGreaterThanOrEqualTo(room.share);
    }

    private Composition in(Room room) {
        return quiet.with(room.noise(quiet.sound().length), DECIBELS, room.name());
    }

    /** The share of the times of one list that are near those of the other. */
    private static double near(List<Double> one, List<Double> other) {
        int near = 0;
        for (int i = 0; i < one.size(); i++) {
            near += Math.abs(one.get(i) - other.get(i)) <= NEAR ? 1 : 0;
        }
        return (double) near / one.size();
    }

    /** Start and end of each passage in turn; from the truth come only the times of its words. */
    private static List<Double> bounds(Composition reading, FrameMeter meter) {
        Loudness loudness = new Loudness(StreamTime.ZERO);
        meter.hear(new AudioBlock(StreamTime.ZERO, Sound.RATE, reading.sound())).ifPresent(loudness::add);
        List<Passage> said = reading.truth().passages();
        List<Double> bounds = new ArrayList<>();
        for (int i = 0; i < said.size(); i++) {
            double after = i == 0 ? 0 : said.get(i - 1).end() - INSIDE;
            double before = i + 1 == said.size()
                    ? reading.truth().seconds()
                    : said.get(i + 1).start() + INSIDE;
            Loudness.Stretch found = loudness.around(
                    StreamTime.ofSeconds(said.get(i).start() + INSIDE),
                    StreamTime.ofSeconds(said.get(i).end() - INSIDE),
                    StreamTime.ofSeconds(after),
                    StreamTime.ofSeconds(before));
            bounds.add(found.start().seconds());
            bounds.add(found.end().seconds());
        }
        return bounds;
    }

    /** Which hundredths of a second are voice by the other detector. */
    private static boolean[] detected(short[] sound) throws IOException {
        int frame = Sound.RATE / FrameLevels.PER_SECOND;
        boolean[] voice = new boolean[sound.length / frame];
        VoiceActivityDetector.loadLibrary();
        try (VoiceActivityDetector detector = VoiceActivityDetector.newInstance()) {
            detector.setSampleRate(VoiceActivityDetector.SampleRate.fromValue(Sound.RATE));
            detector.setMode(VoiceActivityDetector.Mode.VERY_AGGRESSIVE);
            for (int i = 0; i < voice.length; i++) {
                voice[i] = detector.process(Arrays.copyOfRange(sound, i * frame, (i + 1) * frame));
            }
        }
        return voice;
    }

    /** When the first voice near a time begins. */
    private static double first(boolean[] voice, double time) {
        int near = (int) Math.round(time * FrameLevels.PER_SECOND);
        int frame = Math.max(0, near - REACH);
        while (frame < Math.min(voice.length, near + REACH) && !voice[frame]) {
            frame++;
        }
        return (double) frame / FrameLevels.PER_SECOND;
    }

    /** When the last voice near a time ends. */
    private static double last(boolean[] voice, double time) {
        int near = (int) Math.round(time * FrameLevels.PER_SECOND);
        int frame = Math.min(voice.length, near + REACH);
        while (frame > Math.max(0, near - REACH) && !voice[frame - 1]) {
            frame--;
        }
        return (double) frame / FrameLevels.PER_SECOND;
    }
}
