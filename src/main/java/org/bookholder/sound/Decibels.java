package org.bookholder.sound;

/** Converts between levels in dBFS and amplitudes, where 1 is full scale. */
public final class Decibels {
    /** The level of digital silence; lower than any level that 16 bits can represent. */
    public static final double SILENCE = -120;

    private Decibels() {}

    /** The level of an amplitude, in dBFS, {@value #SILENCE} at least: a full-scale square wave is 0. */
    public static double ofAmplitude(double amplitude) {
        return ofPower(amplitude * amplitude);
    }

    /** The level of a mean square, in dBFS, {@value #SILENCE} at least. */
    public static double ofPower(double meanSquare) {
        return meanSquare <= 1e-12 ? SILENCE : 10 * Math.log10(meanSquare);
    }

    /** The amplitude of a level. */
    public static double amplitude(double decibels) {
        return Math.pow(10, decibels / 20);
    }

    /** The mean square of a level. */
    public static double power(double decibels) {
        return Math.pow(10, decibels / 10);
    }
}
