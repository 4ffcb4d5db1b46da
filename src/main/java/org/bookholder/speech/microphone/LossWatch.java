package org.bookholder.speech.microphone;

/**
 * Notices samples that a device or the system dropped, which nothing reports: fewer have come than time has passed.
 *
 * <p>The clocks of device and machine drift apart by up to a thousandth, so only a lag that grows faster counts, and
 * only one that lasts: samples that are merely late come in the end.
 */
final class LossWatch {
    private static final double LEAST_SECONDS = 0.1;
    private static final double PATIENCE_SECONDS = 1;
    private static final double DRIFT = 0.001;

    private final int rate;
    private final long startNanos;
    private final long startSamples;
    private double usualLag;
    private double lastSeconds;
    private double lateSince = Double.NaN;
    private double leastExcess;
    private long lost;

    /** Begins to watch when the first samples have come. */
    LossWatch(int rate, long nanos, long received) {
        this.rate = rate;
        this.startNanos = nanos;
        this.startSamples = received;
    }

    /**
     * Compares samples with time.
     *
     * @param nanos monotonic time
     * @param received samples that have come in all
     * @param overrun whether the device is known to have had no room for more, so that there is nothing to wait for
     * @return samples newly known to be lost, usually 0
     */
    long check(long nanos, long received, boolean overrun) {
        double seconds = (nanos - startNanos) / 1e9;
        double lag = seconds - (received - startSamples + lost) / (double) rate;
        usualLag = Math.min(lag, usualLag + (seconds - lastSeconds) * DRIFT);
        lastSeconds = seconds;
        double excess = lag - usualLag;
        if (excess < LEAST_SECONDS) {
            lateSince = Double.NaN;
            return 0;
        }
        if (Double.isNaN(lateSince)) {
            lateSince = seconds;
            leastExcess = excess;
        }
        leastExcess = Math.min(leastExcess, excess);
        if (!overrun && seconds - lateSince < PATIENCE_SECONDS) {
            return 0;
        }
        lateSince = Double.NaN;
        long samples = Math.round(leastExcess * rate);
        lost += samples;
        return samples;
    }
}
