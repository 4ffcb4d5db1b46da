package org.bookholder.sound;

/** Levels against full scale, which is an amplitude of 1. */
public final class Decibels {
    /** The level of digital silence; below anything that 16 bits can hold. */
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
