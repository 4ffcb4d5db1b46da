package org.bookholder.speech;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class VoiceBandTest {
    private static final double CORNER = 200;

    /**
     * The gain of a Butterworth high-pass of fourth order, 1 / sqrt(1 + (corner / frequency)^8), with frequencies warped as
     * the bilinear transform does (Oppenheim and Schafer, Discrete-Time Signal Processing, chapter on filter design).
     */
    @ParameterizedTest
    @ValueSource(ints = {8_000, 16_000, 44_100, 48_000})
    void isAButterworthFilterOfFourthOrder(int rate) {
        for (double hertz : new double[] {50, 100, 150, 200, 300, 1_000, 3_500}) {
            double ratio = Math.tan(Math.PI * CORNER / rate) / Math.tan(Math.PI * hertz / rate);
            double expected = -10 * Math.log10(1 + Math.pow(ratio, 8));
            assertThat(gain(hertz, rate)).as("%s Hz at %d", hertz, rate).isCloseTo(expected, within(0.1));
        }
    }

    @Test
    void aSteadyOffsetIsNoSoundFromTheFirstSampleOn() {
        VoiceBand band = new VoiceBand(16_000);
        for (int i = 0; i < 100; i++) {
            assertThat(band.pass(5_000)).isZero();
        }
    }

    /** In dB, over whole periods, after the filter has settled. */
    private static double gain(double hertz, int rate) {
        VoiceBand band = new VoiceBand(rate);
        double in = 0;
        double out = 0;
        for (int i = 0; i < 2 * rate; i++) {
            double sample = 1_000 * Math.sin(2 * Math.PI * hertz * i / rate);
            double passed = band.pass(sample);
            in += i < rate ? 0 : sample * sample;
            out += i < rate ? 0 : passed * passed;
        }
        return 10 * Math.log10(out / in);
    }
}
