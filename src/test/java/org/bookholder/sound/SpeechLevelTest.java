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

    /**
     * Thresholds lie 6.02 dB apart (P.56); the level at which the margin of 15.9 dB is met lies between two of them. At -36.12 dBFS
     * both sounds are active (-19.96 dBFS, 0.26 dB too much), at -30.10 the louder one alone (-17 dBFS, 2.8 dB too little).
     */
    @Test
    void theLevelIsSoughtBetweenTwoThresholds() {
        SpeechLevel speech = SpeechLevel.of(Tones.joined(steady(-17, 20), steady(-33, 20)), RATE);
        assertThat(speech.level()).isCloseTo(-19.7, within(0.15));
    }

    /** The envelope of clicks never comes within the margin of their level: all that is above the lowest threshold counts. */
    @Test
    void clicksHaveTheLevelOfTheTimeInWhichTheyAreHeard() {
        float[] clicks = new float[10 * RATE];
        for (int i = 0; i < clicks.length; i += RATE / 10) {
            clicks[i] = 1;
        }
        SpeechLevel all = SpeechLevel.of(clicks, RATE);
        assertThat(all.level()).isCloseTo(10 * Math.log10(10.0 / RATE), within(0.1));
        assertThat(all.activity()).isCloseTo(1, within(0.02));
        SpeechLevel half = SpeechLevel.of(Tones.joined(clicks, Tones.silence(RATE, 10)), RATE);
        assertThat(half.level()).isCloseTo(all.level(), within(0.2));
        assertThat(half.activity()).isCloseTo(0.5, within(0.03));
    }

    /** The envelope rises and falls within 0.03 s twice over (P.56), so that one click is heard longer than the hangover. */
    @Test
    void theEnvelopeIsSmooth() {
        float[] clicks = new float[10 * RATE];
        for (int i = 0; i < clicks.length; i += RATE) {
            clicks[i] = 1;
        }
        assertThat(SpeechLevel.of(clicks, RATE).activity()).isBetween(0.3, 0.6);
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
