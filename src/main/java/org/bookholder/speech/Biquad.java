package org.bookholder.speech;

/** A second-order filter, y = b0 x + b1 x' + b2 x'' - a1 y' - a2 y''. Confined to one thread. */
public final class Biquad {
    private final double b0;
    private final double b1;
    private final double b2;
    private final double a1;
    private final double a2;
    private double first;
    private double second;

    /** A filter with these coefficients, at rest. */
    public Biquad(double b0, double b1, double b2, double a1, double a2) {
        this.b0 = b0;
        this.b1 = b1;
        this.b2 = b2;
        this.a1 = a1;
        this.a2 = a2;
    }

    /**
     * A high-pass by the formulas of R. Bristow-Johnson, Cookbook formulae for audio equalizer biquad filter coefficients.
     *
     * @param hertz its corner frequency, below half of the rate
     * @param quality its gain at the corner frequency
     * @param rate samples in one second
     */
    public static Biquad highPass(double hertz, double quality, int rate) {
        double turn = 2 * Math.PI * hertz / rate;
        double alpha = Math.sin(turn) / (2 * quality);
        double cosine = Math.cos(turn);
        double scale = 1 + alpha;
        return new Biquad(
                (1 + cosine) / 2 / scale,
                -(1 + cosine) / scale,
                (1 + cosine) / 2 / scale,
                -2 * cosine / scale,
                (1 - alpha) / scale);
    }

    /**
     * A low-pass by the same formulas.
     *
     * @param hertz its corner frequency, below half of the rate
     * @param quality its gain at the corner frequency
     * @param rate samples in one second
     */
    public static Biquad lowPass(double hertz, double quality, int rate) {
        double turn = 2 * Math.PI * hertz / rate;
        double alpha = Math.sin(turn) / (2 * quality);
        double cosine = Math.cos(turn);
        double scale = 1 + alpha;
        return new Biquad(
                (1 - cosine) / 2 / scale,
                (1 - cosine) / scale,
                (1 - cosine) / 2 / scale,
                -2 * cosine / scale,
                (1 - alpha) / scale);
    }

    /** The next sample, filtered. */
    public double pass(double sample) {
        double out = b0 * sample + first;
        first = b1 * sample - a1 * out + second;
        second = b2 * sample - a2 * out;
        return out;
    }

    /** The coefficients b0, b1, b2, a1, a2. */
    public double[] coefficients() {
        return new double[] {b0, b1, b2, a1, a2};
    }
}
