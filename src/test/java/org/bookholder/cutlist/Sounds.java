package org.bookholder.cutlist;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.bookholder.speech.AudioBlock;

/** Recordings made by hand. */
final class Sounds {
    private static final int RATE = 16_000;

    /** Samples in which a sound swells or fades, 1 ms. */
    private static final int RAMP = RATE / 1000;

    private Sounds() {}

    /**
     * A square wave of {@code seconds}; its amplitude at each time is exact, so every frame has an exact level. In its first
     * and last millisecond a sound swells and fades, since one that is cut off has low frequencies too.
     */
    static TakeSound of(int seconds, DoubleUnaryOperator amplitude) {
        short[] samples = new short[seconds * RATE];
        for (int i = 0; i < samples.length; i++) {
            double level = swelling(amplitude, i);
            samples[i] = (short) (i % 2 == 0 ? level : -level);
        }
        return (take, from, to) -> {
            int first = (int) from.samples(RATE);
            int beyond = (int) Math.min(samples.length, to.samples(RATE));
            return first >= beyond
                    ? Optional.empty()
                    : Optional.of(new AudioBlock(from, RATE, Arrays.copyOfRange(samples, first, beyond)));
        };
    }

    private static double swelling(DoubleUnaryOperator amplitude, int at) {
        double level = amplitude.applyAsDouble((double) at / RATE);
        double sum = 0;
        for (int i = -RAMP; i <= RAMP; i++) {
            sum += Math.min(level, amplitude.applyAsDouble((double) (at + i) / RATE));
        }
        return sum / (2 * RAMP + 1);
    }
}
