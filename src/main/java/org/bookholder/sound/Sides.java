package org.bookholder.sound;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * Compares the two channels of a sound, a tenth of a second at a time. The limits are common practice. Confined to one
 * thread.
 */
public final class Sides {
    private static final int PER_SECOND = 10;
    private static final double SOUNDING = Decibels.power(-50);

    /** A side that is softer than the other by this much is not heard beside it: 20 dB, as power. */
    private static final double SOFTER = 0.01;

    /** Below this correlation of the two sides more than half of their sound is lost on one loudspeaker. */
    private static final double OPPOSED = -0.5;

    private final int rate;
    private double leftPower;
    private double rightPower;
    private double product;
    private int samples;

    /** How the two channels go together. */
    public enum Kind {
        /** Nothing sounds. */
        QUIET,
        /** Both are heard, and add up. */
        BOTH,
        /** Only the left one is heard. */
        LEFT_ONLY,
        /** Only the right one is heard. */
        RIGHT_ONLY,
        /** They cancel each other when they are played together. */
        OPPOSED
    }

    /** Nothing heard yet of a sound of so many samples a second. */
    public Sides(int rate) {
        this.rate = rate;
    }

    /** Whether the next sample begins a tenth of a second. */
    public boolean atStart() {
        return samples == 0;
    }

    /** The next sample of each side, full scale is 1; says how the tenth of a second was that is now complete, if one is. */
    public Optional<Kind> hear(float left, float right) {
        leftPower += left * left;
        rightPower += right * right;
        product += left * right;
        if (++samples < rate / PER_SECOND) {
            return Optional.empty();
        }
        Kind kind = kind();
        leftPower = 0;
        rightPower = 0;
        product = 0;
        samples = 0;
        return Optional.of(kind);
    }

    private Kind kind() {
        double loudest = Math.max(leftPower, rightPower);
        if (loudest <= SOUNDING * samples) {
            return Kind.QUIET;
        }
        if (Math.min(leftPower, rightPower) < SOFTER * loudest) {
            return leftPower > rightPower ? Kind.LEFT_ONLY : Kind.RIGHT_ONLY;
        }
        return product < OPPOSED * Math.sqrt(leftPower * rightPower) ? Kind.OPPOSED : Kind.BOTH;
    }

    /** How two whole channels go together: as they do for more than half of the time in which they sound, or else {@code BOTH}. */
    static Kind of(float[] left, float[] right, int rate) {
        Sides sides = new Sides(rate);
        Map<Kind, Integer> counts = new EnumMap<>(Kind.class);
        for (int i = 0; i < left.length; i++) {
            sides.hear(left[i], right[i]).ifPresent(kind -> counts.merge(kind, 1, Integer::sum));
        }
        counts.remove(Kind.QUIET);
        int sounding = counts.values().stream().mapToInt(Integer::intValue).sum();
        return counts.entrySet().stream()
                .filter(one -> 2 * one.getValue() > sounding)
                .map(Map.Entry::getKey)
                .findFirst()
                .orElse(sounding == 0 ? Kind.QUIET : Kind.BOTH);
    }
}
