package org.bookholder.sound;

import java.util.Arrays;
import org.bookholder.speech.AudioBlock;

/**
 * Measures loudness and true peak according to ITU-R BS.1770-4, EBU Tech 3341 and 3342. Confined to one thread.
 *
 * <p>Keeps one number for each tenth of a second.
 */
public final class LoudnessMeter {
    private static final double OFFSET = -0.691;
    private static final double FULL_SCALE = 32_768;
    private static final int STEPS_PER_SECOND = 10;
    private static final int MOMENTARY_STEPS = 4;
    private static final int SHORT_TERM_STEPS = 30;

    private final int rate;
    private final double[] weights;
    private final KWeighting[] filters;
    private final TruePeak[] peaks;
    private double[] steps = new double[STEPS_PER_SECOND * 60];
    private int count;
    private long samples;
    private long stepStart;
    private double sum;

    /**
     * Creates a meter that has heard nothing yet.
     *
     * @param rate samples a second
     * @param weights weight of each channel: 1 for left, right and centre, 1.41 for surround, 0 for low-frequency
     *     effects; 2 for a single channel that is played on two loudspeakers
     */
    public LoudnessMeter(int rate, double... weights) {
        if (rate <= 0 || weights.length == 0) {
            throw new IllegalArgumentException("rate (" + rate + ") must be positive, and weights not empty");
        }
        this.rate = rate;
        this.weights = weights.clone();
        filters = new KWeighting[weights.length];
        peaks = new TruePeak[weights.length];
        for (int i = 0; i < weights.length; i++) {
            filters[i] = new KWeighting(rate);
            peaks[i] = new TruePeak(rate);
        }
    }

    /** Takes in a block of one channel. */
    public void hear(AudioBlock block) {
        for (short sample : block.samples()) {
            add(0, sample / FULL_SCALE);
            next();
        }
    }

    /** Takes in samples of each channel, the same number of each; full scale is 1. */
    public void hear(float[][] channels) {
        for (int i = 0; i < channels[0].length; i++) {
            for (int channel = 0; channel < weights.length; channel++) {
                add(channel, channels[channel][i]);
            }
            next();
        }
    }

    private void add(int channel, double sample) {
        double weighted = filters[channel].pass(sample);
        sum += weights[channel] * weighted * weighted;
        peaks[channel].hear(sample);
    }

    private void next() {
        samples++;
        // Computed from the total count, so that rates such as 11,025 Hz do not drift.
        if (samples >= (count + 1L) * rate / STEPS_PER_SECOND) {
            if (count == steps.length) {
                steps = Arrays.copyOf(steps, 2 * count);
            }
            steps[count++] = sum / (samples - stepStart);
            stepStart = samples;
            sum = 0;
        }
    }

    /** The loudness of the last 400 ms, in LUFS; negative infinity if they were silent or less has been heard. */
    public double momentary() {
        return count < MOMENTARY_STEPS ? Double.NEGATIVE_INFINITY : loudness(mean(count, MOMENTARY_STEPS));
    }

    /** The loudness of the last 3 s, in LUFS; negative infinity if they were silent or less has been heard. */
    public double shortTerm() {
        return count < SHORT_TERM_STEPS ? Double.NEGATIVE_INFINITY : loudness(mean(count, SHORT_TERM_STEPS));
    }

    /** The loudness of everything heard so far. */
    public LoudnessReading reading() {
        double[] momentary = windows(MOMENTARY_STEPS);
        double[] shortTerm = windows(SHORT_TERM_STEPS);
        double highest =
                Arrays.stream(peaks).mapToDouble(TruePeak::highest).max().orElse(0);
        return new LoudnessReading(
                integrated(momentary),
                range(shortTerm),
                loudness(Arrays.stream(momentary).max().orElse(0)),
                loudness(Arrays.stream(shortTerm).max().orElse(0)),
                Decibels.ofAmplitude(highest));
    }

    private static double integrated(double[] powers) {
        double[] heard = above(powers, power(-70));
        double relative = Arrays.stream(heard).average().orElse(0) * Decibels.power(-10);
        return loudness(Arrays.stream(above(heard, relative)).average().orElse(0));
    }

    /** From the 10th to the 95th percentile of the short-term loudness, gated 20 LU below the mean. */
    private static double range(double[] powers) {
        double[] heard = above(powers, power(-70));
        double relative = Arrays.stream(heard).average().orElse(0) * Decibels.power(-20);
        double[] kept = above(heard, relative);
        if (kept.length < 2) {
            return 0;
        }
        Arrays.sort(kept);
        double low = kept[(int) Math.round(0.10 * (kept.length - 1))];
        double high = kept[(int) Math.round(0.95 * (kept.length - 1))];
        return loudness(high) - loudness(low);
    }

    private static double[] above(double[] powers, double gate) {
        return Arrays.stream(powers).filter(p -> p > gate).toArray();
    }

    private double[] windows(int length) {
        double[] windows = new double[Math.max(0, count - length + 1)];
        for (int i = 0; i < windows.length; i++) {
            windows[i] = mean(i + length, length);
        }
        return windows;
    }

    private double mean(int end, int length) {
        double total = 0;
        for (int i = end - length; i < end; i++) {
            total += steps[i];
        }
        return total / length;
    }

    private static double loudness(double power) {
        return power <= 0 ? Double.NEGATIVE_INFINITY : OFFSET + 10 * Math.log10(power);
    }

    private static double power(double loudness) {
        return Decibels.power(loudness - OFFSET);
    }
}
