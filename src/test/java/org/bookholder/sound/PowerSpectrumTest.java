package org.bookholder.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

final class PowerSpectrumTest {
    private static final int RATE = 48_000;

    /** Parseval's theorem: under a Hann window a sine of amplitude a has 3/32 a² N² in the positive frequencies. */
    @Test
    void aTonesPowerIsAtItsFrequency() {
        float[] tone = new float[2048];
        for (int i = 0; i < tone.length; i++) {
            tone[i] = (float) (0.5 * Math.sin(2 * Math.PI * 3000 * i / RATE));
        }
        PowerSpectrum spectrum = new PowerSpectrum(tone.length, RATE);
        spectrum.take(tone);

        double whole = 3.0 / 32 * 0.25 * tone.length * tone.length;
        assertThat(spectrum.between(2900, 3100)).isCloseTo(whole, within(0.01 * whole));
        assertThat(spectrum.between(300, 2700)).isLessThan(1e-6 * whole);
        assertThat(spectrum.between(3300, 40_000)).isLessThan(1e-6 * whole);
    }
}
