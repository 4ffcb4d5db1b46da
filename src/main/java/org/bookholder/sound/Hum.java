package org.bookholder.sound;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Mains hum: steady tones at the mains frequency and its multiples.
 *
 * @param hertz 50 or 60
 * @param level level of all its tones together, root mean square in dBFS
 * @param tones the multiples that stand out, 1 for the mains frequency itself
 */
public record Hum(int hertz, double level, List<Integer> tones) {
    private static final int MULTIPLES = 10;

    /** To count as a tone, a frequency must have at least this many times the power of those beside it. */
    private static final double STANDING_OUT = 10;

    private static final double LEAST = Decibels.power(-100);

    /**
     * Offsets in Hz at which to measure beside a tone: outside the window's main lobe, but not as far as the other
     * mains frequency.
     */
    private static final double[] BESIDE = {-8, -6, -4, 4, 6, 8};

    private static final int REACH = 10;

    /** Copies the list. */
    public Hum {
        tones = List.copyOf(tones);
    }

    /** The hum in samples of at least a second in which nobody speaks; full scale is 1. */
    public static Optional<Hum> of(float[] samples, int rate) {
        Goertzel goertzel = new Goertzel(rate);
        Optional<Hum> european = at(50, samples, goertzel, rate);
        Optional<Hum> american = at(60, samples, goertzel, rate);
        if (european.isEmpty() || american.isEmpty()) {
            return european.or(() -> american);
        }
        return european.get().level() >= american.get().level() ? european : american;
    }

    private static Optional<Hum> at(int hertz, float[] samples, Goertzel goertzel, int rate) {
        List<Integer> tones = new ArrayList<>();
        double sum = 0;
        for (int multiple = 1; multiple <= MULTIPLES && multiple * hertz + REACH < rate / 2; multiple++) {
            double power = goertzel.power(samples, multiple * hertz);
            if (power > LEAST && power > STANDING_OUT * beside(multiple * hertz, samples, goertzel)) {
                tones.add(multiple);
                sum += power;
            }
        }
        // Transformers hum at twice the mains frequency; a sound with neither tone is not mains hum.
        boolean mains = tones.contains(1) || tones.contains(2);
        return mains ? Optional.of(new Hum(hertz, Decibels.ofPower(sum), tones)) : Optional.empty();
    }

    private static double beside(int hertz, float[] samples, Goertzel goertzel) {
        double[] powers = Arrays.stream(BESIDE)
                .map(off -> goertzel.power(samples, hertz + off))
                .sorted()
                .toArray();
        return powers[powers.length / 2];
    }
}
