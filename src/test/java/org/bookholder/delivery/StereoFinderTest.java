package org.bookholder.delivery;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

/** Two sides of noise, from which one fault each is made. */
final class StereoFinderTest {
    private static final int RATE = 48_000;

    private final float[] voice = noise(1);

    @Test
    void oneVoiceOnBothSidesIsRight() {
        assertThat(found(voice, voice)).isEmpty();
        assertThat(found(voice, scaled(voice, 0.3f))).isEmpty();
    }

    @Test
    void twoMicrophonesApartAreRight() {
        assertThat(found(voice, noise(2))).isEmpty();
    }

    @Test
    void aVoiceOnOneSideIsFound() {
        assertThat(found(voice, new float[voice.length]))
                .containsExactly("mend stereo 0.000-10.000: heard on the left only, for 10.0 s");
        assertThat(found(scaled(voice, 0.09f), voice))
                .containsExactly("mend stereo 0.000-10.000: heard on the right only, for 10.0 s");
    }

    @Test
    void sidesThatCancelEachOtherAreFound() {
        assertThat(found(voice, scaled(voice, -1)))
                .containsExactly(
                        "mend stereo 0.000-10.000: left and right cancel each other on one loudspeaker, for 10.0 s");
        assertThat(found(voice, mixed(scaled(voice, -1), noise(2), 0.5f))).hasSize(1);
        assertThat(found(voice, mixed(scaled(voice, -1), noise(2), 3))).isEmpty();
    }

    @Test
    void onlyStretchesOfTwoSecondsCount() {
        float[] right = voice.clone();
        Arrays.fill(right, RATE, (int) (2.9 * RATE), 0);
        Arrays.fill(right, 5 * RATE, (int) (7.5 * RATE), 0);
        assertThat(found(voice, right)).containsExactly("mend stereo 5.000-7.500: heard on the left only, for 2.5 s");
    }

    @Test
    void silenceHasNoSides() {
        assertThat(found(scaled(voice, 0.001f), new float[voice.length])).isEmpty();
    }

    private static List<String> found(float[] left, float[] right) {
        Findings findings = new Findings();
        StereoFinder finder = new StereoFinder(RATE, findings);
        for (int i = 0; i < left.length; i++) {
            finder.hear(StreamTime.ZERO, i, left[i], right[i]);
        }
        finder.end(StreamTime.ofSamples(left.length, RATE));
        return findings.all().stream().map(SoundFinderTest::described).toList();
    }

    private static float[] noise(long seed) {
        Random random = new Random(seed);
        float[] noise = new float[10 * RATE];
        for (int i = 0; i < noise.length; i++) {
            noise[i] = (float) (0.1 * random.nextGaussian());
        }
        return noise;
    }

    private static float[] scaled(float[] sound, float factor) {
        float[] scaled = new float[sound.length];
        for (int i = 0; i < sound.length; i++) {
            scaled[i] = factor * sound[i];
        }
        return scaled;
    }

    private static float[] mixed(float[] one, float[] other, float factor) {
        float[] mixed = one.clone();
        for (int i = 0; i < mixed.length; i++) {
            mixed[i] += factor * other[i];
        }
        return mixed;
    }
}
