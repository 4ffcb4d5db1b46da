package org.bookholder.timing;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class FrameRateTest {
    private static final long TEN_HOURS = 10L * 3600 * StreamTime.TICKS_PER_SECOND;

    /** An hour of 30 frames at 29.97 lasts 3603.6 s, an hour of drop-frame 3599.9964 s: from the definition of the rate. */
    @Test
    void anHourOfFramesAt29_97LastsWhatTheDefinitionSays() {
        assertThat(FrameRate.FPS_29_97.length(108_000).seconds()).isEqualTo(3603.6);
        assertThat(FrameRate.FPS_29_97.length(107_892).ticks()).isEqualTo(172_799_828);
        assertThat(107_892L * 1001 * 48_000 / 30_000.0).isEqualTo(172_799_827.2);
    }

    @ParameterizedTest
    @ValueSource(strings = {"23.976", "24", "25", "29.97", "30", "50", "59.94", "60"})
    void tenHoursShowNoDrift(String name) {
        FrameRate rate = FrameRate.named(name).orElseThrow();
        for (long ticks = TEN_HOURS - 5000; ticks < TEN_HOURS; ticks++) {
            long exact = BigInteger.valueOf(ticks)
                    .multiply(BigInteger.valueOf(rate.numerator()))
                    .divide(BigInteger.valueOf(48_000L * rate.denominator()))
                    .longValueExact();
            assertThat(rate.frameAt(ticks)).isEqualTo(exact);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"23.976", "24", "25", "29.97", "30", "50", "59.94", "60"})
    void everyFrameBeginsOnTheFirstTickThatShowsIt(String name) {
        FrameRate rate = FrameRate.named(name).orElseThrow();
        for (long frame = 0; frame < 5000; frame++) {
            long ticks = rate.ticksAt(frame);
            assertThat(rate.frameAt(ticks)).isEqualTo(frame);
            assertThat(rate.frameAt(ticks - 1)).isEqualTo(frame - 1);
            assertThat(rate.nearestFrame(ticks)).isEqualTo(frame);
        }
    }

    @Test
    void aTimeBeforeTheStartHasANegativeFrame() {
        assertThat(FrameRate.FPS_25.frameAt(-1)).isEqualTo(-1);
        assertThat(FrameRate.FPS_25.nearestFrame(-960)).isEqualTo(0);
        assertThat(FrameRate.FPS_25.nearestFrame(-961)).isEqualTo(-1);
    }

    @ParameterizedTest
    @CsvSource({"30000, 1001, 29.97", "2997, 100, 29.97", "24000, 1001, 23.976", "25, 1, 25", "90000, 1501, 59.94"})
    void findsTheStandardRateThatAFileMeans(long numerator, long denominator, String label) {
        assertThat(FrameRate.near(numerator, denominator).orElseThrow().label()).isEqualTo(label);
    }

    @Test
    void knowsNoStandardRateNearFifteen() {
        assertThat(FrameRate.near(15, 1)).isEmpty();
        assertThat(FrameRate.near(0, 0)).isEmpty();
        assertThat(FrameRate.named("23.98")).contains(FrameRate.FPS_23_976);
        assertThat(FrameRate.named("12")).isEmpty();
    }

    @Test
    void onlyTwoRatesDrop() {
        assertThat(FrameRate.STANDARD.stream().filter(FrameRate::canDrop))
                .containsExactly(FrameRate.FPS_29_97, FrameRate.FPS_59_94);
        assertThat(FrameRate.STANDARD.stream().mapToInt(FrameRate::countedPerSecond))
                .containsExactly(24, 24, 25, 30, 30, 50, 60, 60);
    }
}
