package org.bookholder.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The active speech level by method B of ITU-T P.56, on sounds whose level and activity are known. */
final class SpeechLevelTest {
    private static final int RATE = 8_000;

    /** A full-scale square wave has 0 dBFS. */
    @ParameterizedTest
    @ValueSource(doubles = {-70, -55.5, -40, -26, -13, -3})
    void steadySoundHasItsOwnLevelAndNoPause(double level) {
        SpeechLevel speech = SpeechLevel.of(steady(level, 20), RATE);
        assertThat(speech.level()).isCloseTo(level, within(0.1));
        assertThat(speech.activity()).isCloseTo(1, within(0.02)).isLessThanOrEqualTo(1);
    }

    @Test
    void aLongPauseIsLeftOutOfTheLevel() {
        SpeechLevel speech = SpeechLevel.of(Tones.joined(steady(-26, 10), Tones.silence(RATE, 10)), RATE);
        assertThat(speech.level()).isCloseTo(-26, within(0.3));
        assertThat(speech.activity()).isCloseTo(0.5, within(0.03));
    }

    /** Pauses up to 0.2 s are part of speech (P.56: hangover time). */
    @Test
    void shortPausesBelongToSpeech() {
        float[][] parts = new float[80][];
        for (int i = 0; i < parts.length; i++) {
            parts[i] = i % 2 == 0 ? steady(-20, 0.15) : Tones.silence(RATE, 0.15);
        }
        SpeechLevel speech = SpeechLevel.of(Tones.joined(parts), RATE);
        assertThat(speech.activity()).isCloseTo(1, within(0.03));
        assertThat(speech.level()).as("half of the time, half of the power").isCloseTo(-23, within(0.2));
    }

    @Test
    void steadyNoiseFarBelowTheSpeechDoesNotCount() {
        float[] speech = Tones.joined(steady(-26, 10), Tones.silence(RATE, 10));
        SpeechLevel noisy = SpeechLevel.of(Tones.mixed(speech, steady(-70, 20)), RATE);
        assertThat(noisy.level()).isCloseTo(-26, within(0.3));
        assertThat(noisy.activity()).isCloseTo(0.5, within(0.03));
    }

    @Test
    void soundSofterThanTheLowestThresholdIsNone() {
        assertThat(SpeechLevel.of(steady(-100, 5), RATE)).isEqualTo(new SpeechLevel(-120, 0));
    }

    @Test
    void theRateDoesNotMatter() {
        float[] slow = steady(-30, 4);
        float[] fast = new float[6 * slow.length];
        Arrays.fill(fast, slow[0]);
        assertThat(SpeechLevel.of(fast, 6 * RATE).level())
                .isCloseTo(SpeechLevel.of(slow, RATE).level(), within(0.05));
    }

    private static float[] steady(double level, double seconds) {
        float[] samples = new float[(int) (seconds * RATE)];
        Arrays.fill(samples, (float) Decibels.amplitude(level));
        return samples;
    }
}
