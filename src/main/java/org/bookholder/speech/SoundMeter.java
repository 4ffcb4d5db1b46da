package org.bookholder.speech;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.timing.StreamTime;

/**
 * Measures sound second by second. Confined to one thread.
 *
 * <p>A second is counted in samples, so lost audio does not shorten it. No standard defines clipping; by common
 * practice, three or more samples in a row at full scale count as clipped.
 */
public final class SoundMeter {
    private static final double FULL_SCALE = 32_768;
    private static final int CLIPPED_RUN = 3;

    private int samples;
    private double squares;
    private int peak;
    private int run;
    private int clipped;

    /**
     * Takes in a block, at the same rate as earlier ones.
     *
     * @return one level for each second that is now complete; usually none
     */
    public List<SoundLevel> hear(AudioBlock block) {
        List<SoundLevel> levels = new ArrayList<>();
        short[] values = block.samples();
        for (int i = 0; i < values.length; i++) {
            add(values[i]);
            if (samples == block.rate()) {
                levels.add(level(block.start().plus(StreamTime.ofSamples(i + 1L, block.rate()))));
            }
        }
        return levels;
    }

    private void add(short value) {
        int size = Math.abs((int) value);
        samples++;
        squares += (double) value * value;
        peak = Math.max(peak, size);
        if (size < Short.MAX_VALUE) {
            run = 0;
            return;
        }
        run++;
        if (run == CLIPPED_RUN) {
            clipped += CLIPPED_RUN;
        } else if (run > CLIPPED_RUN) {
            clipped++;
        }
    }

    private SoundLevel level(StreamTime end) {
        SoundLevel level = new SoundLevel(end, decibels(Math.sqrt(squares / samples)), decibels(peak), clipped);
        samples = 0;
        squares = 0;
        peak = 0;
        clipped = 0;
        return level;
    }

    private static double decibels(double value) {
        return value == 0 ? SoundLevel.SILENCE : 20 * Math.log10(value / FULL_SCALE);
    }
}
