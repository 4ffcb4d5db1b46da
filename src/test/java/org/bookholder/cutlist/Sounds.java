package org.bookholder.cutlist;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.bookholder.speech.AudioBlock;

/** Recordings made by hand. */
final class Sounds {
    private static final int RATE = 16_000;

    private Sounds() {}

    /** A square wave of {@code seconds}; its amplitude at each time is exact, so every frame has an exact level. */
    static TakeSound of(int seconds, DoubleUnaryOperator amplitude) {
        short[] samples = new short[seconds * RATE];
        for (int i = 0; i < samples.length; i++) {
            double level = amplitude.applyAsDouble((double) i / RATE);
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
}
