package org.bookholder.footage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.bookholder.testing.Readings.s;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.AudioRead;
import org.bookholder.speech.wav.WavSource;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Cameras that never were, with known places and clocks, on the demo's reading. */
final class FootageMatcherTest {
    private static final int CAMERAS = 100;
    private static final double[] NOISE = {20, 10, 5};

    private static final List<float[]> READING = new ArrayList<>();

    @BeforeAll
    static void read() throws ProblemException {
        READING.add(reading());
    }

    @Test
    void findsAHundredCamerasToFiveMilliseconds() {
        float[] take = READING.get(0);
        Random random = new Random(20260302);
        List<String> amiss = new ArrayList<>();
        for (int i = 0; i < CAMERAS; i++) {
            double drift = (random.nextDouble() - 0.5) * 200e-6;
            double from = (random.nextDouble() * 60 - 30) * SoundTrack.RATE;
            int length = (int) ((40 + random.nextDouble() * 60) * SoundTrack.RATE);
            float[] film = Cameras.counted(Cameras.elsewhere(take, random), from, drift, length);
            Cameras.addNoise(film, NOISE[i % NOISE.length], random);
            Optional<Placement> found =
                    new FootageMatcher().match(Cameras.track(film), Cameras.track(take), 1, StreamTime.ZERO);
            if (found.isEmpty()) {
                amiss.add("camera " + i + " was not found");
                continue;
            }
            // Both ends of what they have in common, so that a wrong drift cannot hide.
            for (StreamTime at : List.of(found.get().from(), found.get().to())) {
                double wanted = (at.seconds() * SoundTrack.RATE - from) * (1 + drift) / SoundTrack.RATE;
                double error = Math.abs(found.get().inFile(at) / 48_000.0 - wanted);
                if (error > 0.005) {
                    amiss.add("camera " + i + " is out by " + error + " s, confidence "
                            + found.get().confidence());
                }
            }
        }
        assertThat(amiss).isEmpty();
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

    /** The demo's reading at the matcher's rate. */
    private static float[] reading() throws ProblemException {
        List<AudioBlock> blocks = new ArrayList<>();
        try (WavSource source = WavSource.open(Path.of("demo-scripts/lesson-1.wav"))) {
            boolean[] more = {true};
            while (more[0]) {
                int unused = source.read().to(new AudioRead.Reader() {
                    @Override
                    public int samples(AudioBlock block) {
                        blocks.add(block);
                        return 1;
                    }

                    @Override
                    public int ended() {
                        more[0] = false;
                        return 0;
                    }

                    @Override
                    public int gone(String reason) {
                        throw new AssertionError(reason);
                    }
                });
            }
        }
        int step = blocks.get(0).rate() / SoundTrack.RATE;
        int count = blocks.stream().mapToInt(b -> b.samples().length).sum() / step;
        float[] samples = new float[count];
        int at = 0;
        for (AudioBlock block : blocks) {
            for (short sample : block.samples()) {
                if (at / step < count) {
                    // The mean of a few samples will do for a low-pass.
                    samples[at / step] += sample / 32_768f / step;
                    at++;
                }
            }
        }
        return samples;
    }
}
