package org.bookholder.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.Spoken;
import org.bookholder.testing.Wav;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class SpoilWatchTest {
    private static final int RATE = 16_000;
    private static final int SECONDS = 40;

    private static List<Spoil> watched(short[] samples) {
        SpoilWatch watch = new SpoilWatch();
        List<Spoil> spoils = new ArrayList<>();
        FakeAudioSource.blocks(RATE, StreamTime.ofSeconds(100), samples).forEach(b -> spoils.addAll(watch.hear(b)));
        return spoils;
    }

    @Test
    void aCleanReadingIsNotSpoiled() throws ProblemException {
        assertThat(watched(Wav.demo(SECONDS))).isEmpty();
    }

    @Test
    void aClippedVoiceIsSpoiledWhereItClips() throws ProblemException {
        short[] samples = Wav.demo(SECONDS);
        for (int i = 9 * RATE; i < 12 * RATE; i++) {
            samples[i] = (short) Math.max(-32_768, Math.min(32_767, 8 * samples[i]));
        }
        List<Spoil> spoils = watched(samples);
        assertThat(spoils).isNotEmpty().allSatisfy(spoil -> {
            assertThat(spoil.kind()).isEqualTo(Spoil.Kind.CLIPPED);
            assertThat(spoil.start().seconds()).isBetween(109.0, 112.0);
        });
    }

    /** White noise so far below the level of speech (ITU-T P.56). */
    @ParameterizedTest
    @CsvSource({"20, 0, 0.05", "5, 0.9, 1"})
    void aVoiceInNoiseIsSpoiledWhenItHardlyStandsOut(double ratio, double least, double most) throws ProblemException {
        short[] samples = Wav.demo(SECONDS);
        float[] full = new float[samples.length];
        for (int i = 0; i < samples.length; i++) {
            full[i] = samples[i] / 32_768f;
        }
        double level = Decibels.amplitude(SpeechLevel.of(full, RATE).level() - ratio) * 32_768;
        Random random = new Random(15);
        for (int i = 0; i < samples.length; i++) {
            samples[i] += (short) Math.round(level * random.nextGaussian());
        }
        double share = (double) watched(samples).stream()
                        .filter(spoil -> spoil.kind() == Spoil.Kind.NOISY)
                        .count()
                / (SECONDS - 4);
        assertThat(share).isBetween(least, most);
    }

    @ParameterizedTest
    @ValueSource(ints = {10, 40, 200})
    void aHoleInTheMiddleOfAWordIsADropOut(int millis) throws ProblemException {
        short[] samples = Wav.demo(SECONDS);
        int length = millis * RATE / 1000;
        int hole = loudest(samples, length);
        Arrays.fill(samples, hole, hole + length, (short) 0);
        assertThat(watched(samples)).singleElement().satisfies(spoil -> {
            assertThat(spoil.kind()).isEqualTo(Spoil.Kind.DROPOUT);
            assertThat(spoil.start().seconds()).isCloseTo(100 + (double) hole / RATE, within(0.001));
            assertThat(spoil.end().since(spoil.start()).seconds()).isCloseTo(millis / 1000.0, within(0.001));
        });
    }

    /** Wherever in a word a hole of 40 ms is cut: nine in ten of the places where the wave is loud. */
    @Test
    void mostHolesInAVoiceAreFound() throws ProblemException {
        short[] voice = Wav.demo(SECONDS);
        int holes = 0;
        int found = 0;
        for (int at = 2 * RATE; at < voice.length - RATE; at += RATE / 3) {
            short[] samples = Arrays.copyOfRange(voice, 0, at + RATE);
            if (level(samples, at - 160) > -30 && level(samples, at + 640) > -30) {
                Arrays.fill(samples, at, at + 640, (short) 0);
                holes++;
                found += watched(samples).size();
            }
        }
        assertThat(holes).isGreaterThan(20);
        assertThat(found).isBetween(holes * 9 / 10, holes);
    }

    @Test
    void aVoiceThatIsDigitallySilentBetweenItsWordsHasNoHoles() {
        Spoken voice = new Spoken(0.6);
        for (int i = 0; i < 6; i++) {
            voice.says("every wheel begins").says("with").says("its hub");
        }
        short[] samples = voice.sound(RATE);
        // Between words as well, for as short a time as a hole lasts.
        for (int i = 0; i < samples.length; i++) {
            samples[i] = i % (RATE / 4) < RATE / 20 ? 0 : samples[i];
        }
        assertThat(watched(samples)).isEmpty();
    }

    @Test
    void aPauseSilencedByTheMicrophoneIsNotAHole() throws ProblemException {
        short[] samples = Wav.demo(SECONDS);
        for (int from = 0; from < samples.length; from += RATE / 50) {
            if (level(samples, from) < -50) {
                Arrays.fill(samples, from, Math.min(samples.length, from + RATE / 50), (short) 0);
            }
        }
        assertThat(watched(samples)).isEmpty();
    }

    /** Root mean square of 10 ms, in dBFS. */
    private static double level(short[] samples, int from) {
        double squares = 0;
        for (int i = from; i < from + 160; i++) {
            squares += (double) samples[i] * samples[i];
        }
        return 10 * Math.log10(Math.max(1, squares / 160) / 32_768 / 32_768);
    }

    /** A place where a hole begins and ends in a loud wave. */
    private static int loudest(short[] samples, int length) {
        int found = 0;
        for (int i = 2 * RATE; i < samples.length - RATE; i++) {
            found = found == 0 || edges(samples, i, length) > edges(samples, found, length) ? i : found;
        }
        return found;
    }

    private static int edges(short[] samples, int hole, int length) {
        return Math.min(Math.abs(samples[hole - 1]), Math.abs(samples[hole + length]));
    }
}
