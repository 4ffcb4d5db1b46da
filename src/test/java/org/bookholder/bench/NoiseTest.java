package org.bookholder.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

@Execution(ExecutionMode.CONCURRENT)
final class NoiseTest {
    /** Pink noise has the same power in every octave (IEC 60268-1: 3 dB less density for each octave up). */
    @Test
    void pinkNoiseHasTheSamePowerInEveryOctave() {
        double[] noise = Noise.pink(1 << 18, new Random(1));
        double middle = octave(noise, 500);
        for (double hertz : new double[] {125, 250, 1_000, 2_000}) {
            assertThat(10 * Math.log10(octave(noise, hertz) / middle))
                    .as("dB at %f Hz", hertz)
                    .isCloseTo(0, within(2.0));
        }
    }

    /** Brown noise has half the power in each octave of that below it: 6 dB less density, over twice the width. */
    @Test
    void lowNoiseFallsBySixDecibelsAnOctave() {
        double[] noise = Noise.low(1 << 18, new Random(1));
        double middle = octave(noise, 500);
        for (double hertz : new double[] {125, 250, 1_000, 2_000}) {
            assertThat(10 * Math.log10(octave(noise, hertz) / middle))
                    .as("dB at %f Hz", hertz)
                    .isCloseTo(-10 * Math.log10(hertz / 500), within(2.0));
        }
    }

    @Test
    void noiseIsMixedAtTheRequestedDistanceBelowTheVoice() {
        short[] silence = new short[Sound.RATE];
        short[] noisy = Noise.over(silence, 1_000, 15, Noise.pink(silence.length, new Random(2)));
        assertThat(20 * Math.log10(1_000 / Sound.rms(Sound.asDoubles(noisy)))).isCloseTo(15, within(0.1));
    }

    /** Power from {@code low} to twice that, by the correlation with 64 tones spread evenly over the octave. */
    private static double octave(double[] sound, double low) {
        double power = 0;
        for (int i = 0; i < 64; i++) {
            double turn = 2 * Math.PI * low * (1 + (i + 0.5) / 64) / Sound.RATE;
            double cosine = 0;
            double sine = 0;
            for (int t = 0; t < sound.length; t++) {
                cosine += sound[t] * Math.cos(turn * t);
                sine += sound[t] * Math.sin(turn * t);
            }
            power += cosine * cosine + sine * sine;
        }
        return power * low;
    }
}
