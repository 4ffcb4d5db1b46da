package org.bookholder.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.bookholder.testing.Readings.s;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.FrameLevels;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** From which figures on sound counts as unusable. */
final class SpoilLimitsTest {
    private static final int RATE = 16_000;

    @Test
    void threeSamplesInARowAtFullScaleAreClipped() {
        double full = 32_767 / 32_768.0;
        ClippedRuns runs = new ClippedRuns();
        int[] fresh = {
            runs.hear(full),
            runs.hear(-1),
            runs.hear(0.9),
            runs.hear(-full),
            runs.hear(1),
            runs.hear(full),
            runs.hear(1)
        };
        assertThat(fresh).containsExactly(0, 0, 0, 0, 0, 3, 1);
        assertThat(runs.clipped()).isEqualTo(4);
    }

    /** Runs of three clipped samples, so many milliseconds apart. */
    @ParameterizedTest
    @CsvSource({"3, 100, 0", "4, 160, 1", "4, 170, 0", "8, 100, 2", "7, 100, 1"})
    void twelveClippedSamplesInHalfASecondSpoil(int runs, int apart, int spoils) {
        short[] samples = new short[2 * RATE];
        for (int run = 0; run < runs; run++) {
            int at = 1600 + run * apart * RATE / 1000;
            Arrays.fill(samples, at, at + 3, Short.MAX_VALUE);
        }
        List<Spoil> found = new SpoilWatch().hear(new AudioBlock(s(10), RATE, samples), Optional.empty());
        assertThat(found).hasSize(spoils).allSatisfy(spoil -> {
            assertThat(spoil.kind()).isEqualTo(Spoil.Kind.CLIPPED);
            assertThat(spoil.end().since(spoil.start()).seconds()).isCloseTo(3 * apart / 1000.0, within(0.001));
        });
        if (spoils > 0) {
            assertThat(found.get(0).start().seconds()).isCloseTo(10.1, within(0.001));
        }
    }

    /** Levels that alternate between a voice and a room. */
    @ParameterizedTest
    @CsvSource({
        "-40, -54, true",
        "-40, -55, false", // 15 dB louder than the room is enough
        "-40, -42, true",
        "-40, -41, false", // what hardly varies is no voice
        "-50, -60, true",
        "-51, -60, false" // nobody speaks so softly
    })
    void aVoiceHardlyLouderThanTheRoomIsNoisy(int voice, int room, boolean noisy) {
        List<Spoil> found = noise(voice, room, 600);
        assertThat(!found.isEmpty()).isEqualTo(noisy);
        if (noisy) {
            assertThat(found)
                    .containsExactly(
                            new Spoil(s(12), s(13), Spoil.Kind.NOISY), new Spoil(s(13), s(14), Spoil.Kind.NOISY));
        }
    }

    @Test
    void fiveSecondsAreNeededToTellNoise() {
        assertThat(noise(-40, -50, 499)).isEmpty();
        assertThat(noise(-40, -50, 500)).containsExactly(new Spoil(s(12), s(13), Spoil.Kind.NOISY));
    }

    /** A hole of 0.04 s, five frames with its end, after so many frames of a room. */
    @ParameterizedTest
    @CsvSource({"200, -70, 1", "106, -70, 1", "104, -70, 0", "200, -120, 0"})
    void aHoleIsADropOutOnlyInARoomThatIsKnownAndNotDigitallySilent(int frames, byte room, int holes) {
        SpoilWatch watch = new SpoilWatch();
        byte[] levels = new byte[frames];
        Arrays.fill(levels, room);
        watch.hear(
                new AudioBlock(s(0), RATE, new short[] {1000}), Optional.of(new FrameLevels(StreamTime.ZERO, levels)));
        short[] samples = new short[2000];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (short) (i >= 800 && i < 1440 ? 0 : i % 2 == 0 ? 3000 : -3000);
        }
        assertThat(watch.hear(new AudioBlock(s(3), RATE, samples), Optional.empty()))
                .hasSize(holes)
                .allSatisfy(spoil -> assertThat(spoil.kind()).isEqualTo(Spoil.Kind.DROPOUT));
    }

    @Test
    void saysHowMuchOfItLiesBetweenTwoTimes() {
        Spoil spoil = new Spoil(s(10), s(12), Spoil.Kind.NOISY);
        assertThat(spoil.within(s(9), s(11))).isEqualTo(s(1));
        assertThat(spoil.within(s(11.5), s(20))).isEqualTo(s(0.5));
        assertThat(spoil.within(s(0), s(20))).isEqualTo(s(2));
    }

    private static List<Spoil> noise(int voice, int room, int frames) {
        byte[] levels = new byte[frames];
        for (int i = 0; i < frames; i++) {
            levels[i] = (byte) (i % 2 == 0 ? voice : room);
        }
        List<Spoil> found = new ArrayList<>();
        AudioBlock quiet = new AudioBlock(s(10), RATE, new short[] {1000});
        found.addAll(new SpoilWatch().hear(quiet, Optional.of(new FrameLevels(s(10), levels))));
        return found;
    }
}
