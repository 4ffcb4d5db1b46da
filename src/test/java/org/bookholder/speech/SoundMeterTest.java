package org.bookholder.speech;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.Wav;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

final class SoundMeterTest {
    private static final int RATE = 48_000;

    private static List<SoundLevel> measure(short[] samples) {
        SoundMeter meter = new SoundMeter();
        List<SoundLevel> levels = new ArrayList<>();
        FakeAudioSource.blocks(RATE, StreamTime.ZERO, samples).forEach(b -> levels.addAll(meter.hear(b)));
        return levels;
    }

    /** ITU-R BS.1770-4: a 0 dBFS sine of 997 Hz in one channel reads -3.01; its weighting is 0 dB there. */
    @Test
    void aFullScaleSineIsThreeDecibelsBelowFullScale() {
        SoundLevel level = measure(Wav.sine(997, 1, RATE, 1)).get(0);
        assertThat(level.rms()).isCloseTo(-3.01, within(0.01));
        assertThat(level.peak()).isCloseTo(0, within(0.01));
    }

    /** EBU Tech 3341, signals 1 and 2: the level of a tone is that of its peak, here -23 and -33 dBFS. */
    @Test
    void aToneIsMeasuredAtItsLevel() {
        for (double decibels : new double[] {-23, -33}) {
            SoundLevel level = measure(Wav.sine(1_000, Math.pow(10, decibels / 20), RATE, 1))
                    .get(0);
            assertThat(level.peak()).isCloseTo(decibels, within(0.02));
            assertThat(level.rms()).isCloseTo(decibels - 3.01, within(0.02));
            assertThat(level.clipped()).isZero();
        }
    }

    @Test
    void silenceIsFarBelowAnything() {
        assertThat(measure(new short[RATE]))
                .containsExactly(new SoundLevel(StreamTime.ofSeconds(1), SoundLevel.SILENCE, SoundLevel.SILENCE, 0));
    }

    @Test
    void thereIsOneLevelForEachFullSecond() {
        assertThat(measure(new short[RATE * 5 / 2]))
                .extracting(l -> l.end().seconds())
                .containsExactly(1.0, 2.0);
    }

    @Test
    void runsOfThreeSamplesAtFullScaleAreClipped() {
        short[] samples = new short[RATE];
        Arrays.fill(samples, 100, 102, Short.MAX_VALUE);
        Arrays.fill(samples, 200, 203, Short.MAX_VALUE);
        Arrays.fill(samples, 300, 310, Short.MIN_VALUE);
        assertThat(measure(samples)).extracting(l -> l.clipped()).containsExactly(13);
    }
}
