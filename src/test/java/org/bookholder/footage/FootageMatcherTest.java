package org.bookholder.footage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.bookholder.testing.Readings.s;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.bookholder.footage.ffmpeg.FootageSound;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioRead;
import org.bookholder.speech.wav.WavSource;
import org.bookholder.testing.Wav;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Simulated cameras with known places and clocks, on the demo's reading. */
@Execution(ExecutionMode.CONCURRENT)
final class FootageMatcherTest {
    private static final int CAMERAS = 100;
    private static final double NEAR = 0.005;

    private static final int BARE_ROOMS = 30;
    private static final int RECORDED_RATE = 16_000;

    private static final List<float[]> AS_RECORDED = new ArrayList<>();
    private static final List<float[]> READING = new ArrayList<>();

    @TempDir
    private Path folder;

    @BeforeAll
    static void read() throws ProblemException {
        AS_RECORDED.add(recorded());
        READING.add(halved(AS_RECORDED.get(0)));
    }

    @Test
    void findsAHundredCamerasToFiveMilliseconds() {
        float[] take = READING.get(0);
        List<String> amiss = new ArrayList<>();
        for (int i = 0; i < CAMERAS; i++) {
            CameraTrial trial = CameraTrial.of(take, Cameras.Room.ONE_ECHO, i, 1);
            if (trial.found().isEmpty() || trial.error() > NEAR) {
                amiss.add("camera " + i + ": " + trial);
            }
        }
        assertThat(amiss).isEmpty();
    }

    /** Where an echo is louder than the voice, the voice is found or nothing; see note 0104 for more cameras. */
    @Test
    void isNeverWrongInABareRoom() {
        float[] take = READING.get(0);
        List<CameraTrial> found = new ArrayList<>();
        for (int i = 0; i < BARE_ROOMS; i++) {
            CameraTrial trial = CameraTrial.of(take, Cameras.Room.BARE, i, 2);
            trial.found().ifPresent(f -> found.add(trial));
        }
        assertThat(found)
                .hasSizeGreaterThan(BARE_ROOMS * 8 / 10)
                .allSatisfy(trial -> assertThat(trial.error()).isLessThanOrEqualTo(NEAR));
    }

    @Test
    void findsCamerasOfEverySampleRate() throws ProblemException {
        Random random = new Random(5);
        for (int rate : new int[] {16_000, 22_050, 32_000, 44_100, 48_000, 96_000}) {
            double drift = (2 * random.nextDouble() - 1) * 100e-6;
            double from = 20 * random.nextDouble() - 10;
            float[] film = Cameras.counted(
                    AS_RECORDED.get(0), from * RECORDED_RATE, rate * (1 + drift) / RECORDED_RATE - 1, 40 * rate);
            short[] samples = new short[film.length];
            for (int i = 0; i < film.length; i++) {
                samples[i] = (short) Math.round(32_767 * film[i]);
            }
            Path file = Wav.write(folder.resolve(rate + ".wav"), rate, samples);
            try (FootageSound sound = FootageSound.open(file, SoundTrack.RATE);
                    StoredTrack track = StoredTrack.of(sound::read)) {
                Placement found = new FootageMatcher()
                        .match(track, Cameras.track(READING.get(0)), 1, StreamTime.ZERO)
                        .orElseThrow();
                assertThat(found.start() / 48_000.0).as("rate " + rate).isCloseTo(-from * (1 + drift), within(0.001));
                assertThat(found.driftPpm()).as("rate " + rate).isCloseTo(1e6 * drift, within(5.0));
            }
        }
    }

    /** A microphone on one input of a camera leaves the other channel silent. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1})
    void aCameraWithOneSilentChannelIsFound(int heard) throws ProblemException {
        float[] film = Cameras.counted(AS_RECORDED.get(0), 3 * RECORDED_RATE, 0, 40 * RECORDED_RATE);
        short[][] channels = new short[2][film.length];
        for (int i = 0; i < film.length; i++) {
            channels[heard][i] = (short) Math.round(32_767 * film[i]);
        }
        Path file = Wav.write(
                folder.resolve("one-channel-" + heard + ".wav"),
                Wav.bytes(1, RECORDED_RATE, 16, false, channels, (out, sample) -> out.putShort(sample)));
        try (FootageSound sound = FootageSound.open(file, SoundTrack.RATE);
                StoredTrack track = StoredTrack.of(sound::read)) {
            Placement found = new FootageMatcher()
                    .match(track, Cameras.track(READING.get(0)), 1, StreamTime.ZERO)
                    .orElseThrow();
            assertThat(found.start() / 48_000.0).isCloseTo(-3, within(0.001));
        }
    }

    @Test
    void refusesTheSoundOfAnotherDay() {
        float[] take = READING.get(0);
        Random random = new Random(7);
        float[] noise = new float[take.length];
        for (int i = 0; i < noise.length; i++) {
            noise[i] = (float) (0.1 * random.nextGaussian());
        }
        for (float[] other : List.of(Cameras.another(take), noise, new float[take.length])) {
            assertThat(new FootageMatcher().match(Cameras.track(other), Cameras.track(take), 1, StreamTime.ZERO))
                    .isEmpty();
        }
    }

    @Test
    void findsATakeThatLiesFarIntoTheFile() {
        float[] take = READING.get(0);
        Random random = new Random(11);
        float[] film = new float[600 * SoundTrack.RATE];
        for (int i = 0; i < film.length; i++) {
            film[i] = (float) (0.002 * random.nextGaussian());
        }
        float[] heard = Cameras.counted(take, 0, 30e-6, take.length);
        System.arraycopy(heard, 0, film, 500 * SoundTrack.RATE, heard.length);
        Placement found = new FootageMatcher()
                .match(Cameras.track(film), Cameras.track(take), 3, s(200))
                .orElseThrow();
        assertThat(found.start() / 48_000.0).isCloseTo(500, within(0.001));
        assertThat(found.driftPpm()).isCloseTo(30, within(3.0));
        assertThat(found.take()).isEqualTo(3);
        assertThat(found.from()).isEqualTo(s(200));
    }

    /** As in a pickup round: takes of some seconds, with long stretches before and after them in one file. */
    @ParameterizedTest
    @ValueSource(ints = {5, 8, 12})
    void findsAShortTakeBetweenLongOnes(int seconds) {
        float[] reading = READING.get(0);
        List<String> amiss = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            Random random = new Random(100L * seconds + i);
            LongVoice voice = new LongVoice(reading, SoundTrack.RATE, i);
            float[] film = new float[(200 + 30 * i) * SoundTrack.RATE];
            for (int at = 0; at < film.length; ) {
                float[] next = voice.next();
                int count = Math.min(next.length, film.length - at);
                System.arraycopy(next, 0, film, at, count);
                at += count;
            }
            int length = seconds * SoundTrack.RATE;
            int from = random.nextInt(reading.length - length);
            float[] take = Arrays.copyOfRange(reading, from, from + length);
            int place = (40 + random.nextInt(120)) * SoundTrack.RATE;
            System.arraycopy(take, 0, film, place, length);
            float[] heard = Cameras.elsewhere(film, Cameras.Room.ONE_ECHO, random);
            Cameras.addNoise(heard, 15, random);
            Optional<Placement> found = anywhere(heard, take);
            double late = found.map(f -> f.start() / 48_000.0 - (double) place / SoundTrack.RATE)
                    .orElse(Double.NaN);
            if (!(Math.abs(late) <= NEAR)) {
                amiss.add("file " + i + ": " + late);
            }
            float[] other = Cameras.another(take);
            anywhere(heard, other).ifPresent(wrong -> amiss.add("found what is not in it: " + wrong));
        }
        assertThat(amiss).isEmpty();
    }

    private static Optional<Placement> anywhere(float[] film, float[] take) {
        return new FootageMatcher()
                .matchShort(Cameras.track(film), Cameras.track(take), 2, StreamTime.ZERO, 0, film.length);
    }

    /** Half an hour, and a clock that is badly off; two hours are measured by the bench {@code LongMatch}. */
    @ParameterizedTest
    @CsvSource({"1800, -95e-6", "600, 300e-6"})
    void clocksThatDriftApartOverALongTakeAreFollowed(int seconds, double drift) {
        LongVoice voice = new LongVoice(READING.get(0), SoundTrack.RATE, 3);
        float[] take = new float[seconds * SoundTrack.RATE];
        for (int at = 0; at < take.length; ) {
            float[] next = voice.next();
            int count = Math.min(next.length, take.length - at);
            System.arraycopy(next, 0, take, at, count);
            at += count;
        }
        float[] film = Cameras.counted(take, 7.25 * SoundTrack.RATE, drift, take.length);
        Cameras.addNoise(film, 10, new Random(13));
        Placement found = new FootageMatcher()
                .match(Cameras.track(film), Cameras.track(take), 1, StreamTime.ZERO)
                .orElseThrow();
        assertThat(found.confidence()).isGreaterThan(0.8);
        assertThat(found.driftPpm()).isCloseTo(1e6 * drift, within(0.5));
        for (int second : new int[] {10, seconds / 2, seconds - 1}) {
            assertThat(found.inFile(s(second)) / 48_000.0).isCloseTo((second - 7.25) * (1 + drift), within(0.001));
        }
    }

    /** The demo's reading. */
    private static float[] recorded() throws ProblemException {
        List<short[]> blocks = new ArrayList<>();
        try (WavSource source = WavSource.open(Path.of("demo-scripts/lesson-1.wav"))) {
            while (source.read() instanceof AudioRead.Samples read) {
                blocks.add(read.block().samples());
            }
        }
        float[] samples = new float[blocks.stream().mapToInt(b -> b.length).sum()];
        int at = 0;
        for (short[] block : blocks) {
            for (short sample : block) {
                samples[at++] = sample / 32_768f;
            }
        }
        return samples;
    }

    /** At the matcher's rate; the mean of two samples will do for a low-pass. */
    private static float[] halved(float[] samples) {
        float[] half = new float[samples.length / 2];
        for (int i = 0; i < half.length; i++) {
            half[i] = (samples[2 * i] + samples[2 * i + 1]) / 2;
        }
        return half;
    }
}
