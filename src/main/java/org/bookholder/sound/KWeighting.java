package org.bookholder.sound;

/**
 * The frequency weighting of ITU-R BS.1770-4: a shelf filter that models the head, and a high-pass. Confined to one
 * thread.
 *
 * <p>The recommendation prints coefficients for 48 kHz. For other rates the two filters are derived from the analogue
 * prototypes that give the same coefficients at 48 kHz; they are those of libebur128.
 */
final class KWeighting {
    private static final double SHELF_HZ = 1681.974450955533;
    private static final double SHELF_DB = 3.999843853973347;
    private static final double SHELF_Q = 0.7071752369554196;
    private static final double SHELF_SLOPE = 0.4996667741545416;
    private static final double PASS_HZ = 38.13547087602444;
    private static final double PASS_Q = 0.5003270373238773;

    private final Biquad shelf;
    private final Biquad highPass;

    KWeighting(int rate) {
        shelf = shelf(rate);
        highPass = highPass(rate);
    }

    double pass(double sample) {
        return highPass.pass(shelf.pass(sample));
    }

    static Biquad shelf(int rate) {
        double k = Math.tan(Math.PI * SHELF_HZ / rate);
        double high = Math.pow(10, SHELF_DB / 20);
        double band = Math.pow(high, SHELF_SLOPE);
        double scale = 1 + k / SHELF_Q + k * k;
        return new Biquad(
                (high + band * k / SHELF_Q + k * k) / scale,
                2 * (k * k - high) / scale,
                (high - band * k / SHELF_Q + k * k) / scale,
                2 * (k * k - 1) / scale,
                (1 - k / SHELF_Q + k * k) / scale);
    }

    static Biquad highPass(int rate) {
        double k = Math.tan(Math.PI * PASS_HZ / rate);
        double scale = 1 + k / PASS_Q + k * k;
        return new Biquad(1, -2, 1, 2 * (k * k - 1) / scale, (1 - k / PASS_Q + k * k) / scale);
    }

    /** A second-order filter, y = b0 x + b1 x' + b2 x'' - a1 y' - a2 y''. */
    static final class Biquad {
        final double b0;
        final double b1;
        final double b2;
        final double a1;
        final double a2;
        private double first;
        private double second;

        Biquad(double b0, double b1, double b2, double a1, double a2) {
            this.b0 = b0;
            this.b1 = b1;
            this.b2 = b2;
            this.a1 = a1;
            this.a2 = a2;
        }

        double pass(double sample) {
            double out = b0 * sample + first;
            first = b1 * sample - a1 * out + second;
            second = b2 * sample - a2 * out;
            return out;
        }
    }
}
