package org.bookholder.sound;

import org.bookholder.speech.Biquad;

/**
 * The frequency weighting of ITU-R BS.1770-4: a shelf filter that models the head, and a high-pass. Confined to one
 * thread.
 *
 * <p>The recommendation prints coefficients for 48 kHz. For other rates the two filters are derived from the analogue
 * prototypes that give the same coefficients at 48 kHz; they are those of libebur128.
 */
public final class KWeighting {
    private static final double SHELF_HZ = 1681.974450955533;
    private static final double SHELF_DB = 3.999843853973347;
    private static final double SHELF_Q = 0.7071752369554196;
    private static final double SHELF_SLOPE = 0.4996667741545416;
    private static final double PASS_HZ = 38.13547087602444;
    private static final double PASS_Q = 0.5003270373238773;

    private final Biquad shelf;
    private final Biquad highPass;

    /** Creates one for so many samples a second. */
    public KWeighting(int rate) {
        shelf = shelf(rate);
        highPass = highPass(rate);
    }

    /** The next sample, weighted. */
    public double pass(double sample) {
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
}
