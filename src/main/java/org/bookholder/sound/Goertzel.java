package org.bookholder.sound;

/** The power of a tone at one frequency, by Goertzel's algorithm under a Hann window of a second. */
final class Goertzel {
    private final int rate;
    private final double[] window;
    private final double scale;

    Goertzel(int rate) {
        this.rate = rate;
        window = new double[rate];
        double sum = 0;
        for (int i = 0; i < rate; i++) {
            window[i] = 0.5 - 0.5 * Math.cos(2 * Math.PI * i / rate);
            sum += window[i];
        }
        scale = 2 / (sum * sum);
    }

    /**
     * The mean square of a sine of that frequency in the samples, averaged over windows that overlap by half;
     * frequencies within 2 Hz count in part.
     */
    double power(float[] samples, double hertz) {
        double total = 0;
        int windows = 0;
        for (int from = 0; from + rate <= samples.length; from += rate / 2) {
            total += once(samples, from, hertz);
            windows++;
        }
        return windows == 0 ? 0 : total / windows;
    }

    private double once(float[] samples, int from, double hertz) {
        double turn = 2 * Math.cos(2 * Math.PI * hertz / rate);
        double last = 0;
        double before = 0;
        for (int i = 0; i < rate; i++) {
            double next = window[i] * samples[from + i] + turn * last - before;
            before = last;
            last = next;
        }
        return scale * (last * last + before * before - turn * last * before);
    }
}
