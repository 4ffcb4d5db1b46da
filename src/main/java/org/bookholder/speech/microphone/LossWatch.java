package org.bookholder.speech.microphone;

/**
 * Detects samples that the device or the system dropped. Nothing reports them, but fewer samples arrive than the
 * elapsed time requires.
 *
 * <p>The clocks of device and machine drift apart by up to a thousandth, so only a lag that grows faster than that
 * counts, and only if it lasts: samples that are merely late do arrive in the end. While nobody looks, as on a machine that
 * is held up, nobody can see them arrive, so such a time does not count as waiting.
 */
final class LossWatch {
    private static final double LEAST_SECONDS = 0.1;
    private static final double PATIENCE_SECONDS = 1;
    private static final double LONGEST_LOOK = 0.1;
    private static final double DRIFT = 0.001;

    private final int rate;
    private final long startNanos;
    private final long startSamples;
    private double usualLag;
    private double lastSeconds;
    private boolean late;
    private double waited;
    private double leastExcess;
    private long lost;

    /** Starts watching; call it when the first samples have arrived. */
    LossWatch(int rate, long nanos, long received) {
        this.rate = rate;
        this.startNanos = nanos;
        this.startSamples = received;
    }

    /**
     * Compares the number of samples with the elapsed time.
     *
     * @param nanos monotonic time
     * @param received samples received in total
     * @param overrun whether the device's buffer is known to have been full, so that missing samples cannot be merely
     *     late
     * @return samples newly found to be lost, usually 0
     */
    long check(long nanos, long received, boolean overrun) {
        double seconds = (nanos - startNanos) / 1e9;
        double lag = seconds - (received - startSamples + lost) / (double) rate;
        usualLag = Math.min(lag, usualLag + (seconds - lastSeconds) * DRIFT);
        double looked = Math.min(seconds - lastSeconds, LONGEST_LOOK);
        lastSeconds = seconds;
        double excess = lag - usualLag;
        if (excess < LEAST_SECONDS) {
            late = false;
            return 0;
        }
        waited = late ? waited + looked : 0;
        leastExcess = late ? Math.min(leastExcess, excess) : excess;
        late = true;
        if (!overrun && waited < PATIENCE_SECONDS) {
            return 0;
        }
        late = false;
        long samples = Math.round(leastExcess * rate);
        lost += samples;
        return samples;
    }
}
