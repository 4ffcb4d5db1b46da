package org.bookholder.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.s;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.bookholder.speech.AudioBlock;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Which silences in a wave are holes: from 0.01 to 0.25 s, with a wave of -40 dBFS within 5 ms of them. */
final class HoleFinderTest {
    private static final int RATE = 16_000;
    private static final int LOUD = 2000;

    @ParameterizedTest
    @CsvSource({"159, false", "160, true", "4000, true", "4001, false"})
    void aHoleLastsFromAHundredthToAQuarterOfASecond(int length, boolean hole) {
        assertThat(!found(LOUD, 0, length, 0, 0, LOUD).isEmpty()).isEqualTo(hole);
    }

    @ParameterizedTest
    @CsvSource({"0, true", "1, true", "2, false"})
    void ditherIsSilence(int level, boolean hole) {
        assertThat(!found(LOUD, 0, 400, level, 0, LOUD).isEmpty()).isEqualTo(hole);
    }

    @ParameterizedTest
    @CsvSource({"328, 328, true", "327, 328, false", "328, 327, false"})
    void theWaveIsLoudOnBothSides(int before, int after, boolean hole) {
        assertThat(!found(before, 0, 400, 0, 0, after).isEmpty()).isEqualTo(hole);
    }

    /** 80 samples are 5 ms. */
    @ParameterizedTest
    @CsvSource({"79, 0, true", "81, 0, false", "0, 79, true", "0, 81, false"})
    void theWaveIsLoudWithinFiveMilliseconds(int softBefore, int softAfter, boolean hole) {
        assertThat(!found(LOUD, softBefore, 400, 0, softAfter, LOUD).isEmpty()).isEqualTo(hole);
    }

    /** However the sound is cut into blocks. */
    @ParameterizedTest
    @ValueSource(ints = {50, 100, 700, 16_000})
    void aHoleIsGivenWithItsTimes(int block) {
        short[] samples = sound(LOUD, 10, 400, 0, 10, LOUD);
        List<Spoil> found = found(samples, block);
        StreamTime start = s(100).plus(StreamTime.ofSamples(810, RATE));
        assertThat(found)
                .containsExactly(new Spoil(start, start.plus(StreamTime.ofSamples(400, RATE)), Spoil.Kind.DROPOUT));
    }

    @Test
    void theSilenceAtTheBeginningIsNoHole() {
        short[] all = sound(LOUD, 0, 400, 0, 0, LOUD);
        assertThat(found(Arrays.copyOfRange(all, 800, all.length), 16_000)).isEmpty();
    }

    private static List<Spoil> found(int before, int softBefore, int silent, int level, int softAfter, int after) {
        return found(sound(before, softBefore, silent, level, softAfter, after), 16_000);
    }

    private static List<Spoil> found(short[] samples, int block) {
        HoleFinder finder = new HoleFinder();
        List<Spoil> found = new ArrayList<>();
        for (int from = 0; from < samples.length; from += block) {
            short[] part = Arrays.copyOfRange(samples, from, Math.min(samples.length, from + block));
            found.addAll(finder.hear(new AudioBlock(s(100).plus(StreamTime.ofSamples(from, RATE)), RATE, part)));
        }
        return found;
    }

    /** 800 samples of a wave, soft ones, silent ones, soft ones, and 800 of a wave. */
    private static short[] sound(int before, int softBefore, int silent, int level, int softAfter, int after) {
        short[] samples = new short[1600 + softBefore + silent + softAfter];
        int[] lengths = {800, softBefore, silent, softAfter, 800};
        int[] levels = {before, 100, level, 100, after};
        int at = 0;
        for (int part = 0; part < lengths.length; part++) {
            for (int i = 0; i < lengths[part]; i++, at++) {
                samples[at] = (short) (at % 2 == 0 ? levels[part] : -levels[part]);
            }
        }
        return samples;
    }
}
