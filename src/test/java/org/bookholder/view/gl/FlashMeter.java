package org.bookholder.view.gl;

import java.util.Arrays;
import java.util.function.IntBinaryOperator;
import org.bookholder.view.cue.Contrast;

/**
 * Counts general flashes in a run of pictures as WCAG 2.2 defines them ("general flash and red flash thresholds"): a
 * flash is a pair of opposing changes in relative luminance of 10 % or more of the maximum where the darker picture is
 * below 0.80. What passes is no more than three within any second, or flashing areas that together take no more than a
 * quarter of any 341 by 256 pixels of a picture of 1024 by 768.
 *
 * <p>Luminance is taken over squares of four pixels, 0.12 degrees at the standard's distance: finer patterns are excepted
 * there.
 */
final class FlashMeter {
    private static final int CELL = 4;
    private static final double CHANGE = 0.10;
    private static final double DARK = 0.80;
    private static final int BLOCK_WIDTH = 341 / CELL;
    private static final int BLOCK_HEIGHT = 256 / CELL;

    private final int columns;
    private final int rows;
    private final double second;
    private final float[] extreme;
    private final byte[] direction;
    private final float[][] times;
    private final double[] red = new double[256];
    private final double[] green = new double[256];
    private final double[] blue = new double[256];
    private double worst;
    private int most;
    private double now;

    /** For pictures of a size, {@code rate} of them a second. */
    FlashMeter(int width, int height, double rate) {
        columns = width / CELL;
        rows = height / CELL;
        second = 1 / rate;
        extreme = new float[columns * rows];
        direction = new byte[columns * rows];
        // Eight opposing changes hold more than three pairs; the oldest is overwritten.
        times = new float[columns * rows][8];
        for (int i = 0; i < red.length; i++) {
            double linear = Contrast.luminance(i << 16 | i << 8 | i);
            red[i] = 0.2126 * linear;
            green[i] = 0.7152 * linear;
            blue[i] = 0.0722 * linear;
        }
    }

    /** Takes the next picture: its colours, 0xRRGGBB, by column and row. */
    void add(IntBinaryOperator picture) {
        for (int cell = 0; cell < extreme.length; cell++) {
            watch(cell, (float) luminance(picture, cell % columns, cell / columns));
        }
        measure();
        now += second;
    }

    /** The largest share of any block of 341 by 256 pixels that flashed more than three times in a second. */
    double worstShare() {
        return worst;
    }

    /** The most opposing changes within a second in any one square; up to eight are counted. */
    int mostChanges() {
        return most;
    }

    private void watch(int cell, float luminance) {
        if (now == 0) {
            extreme[cell] = luminance;
            Arrays.fill(times[cell], -100);
            return;
        }
        float change = luminance - extreme[cell];
        boolean goesOn = direction[cell] != 0 && Math.signum(change) == direction[cell];
        if (goesOn) {
            extreme[cell] = luminance;
        } else if (Math.abs(change) >= CHANGE && Math.min(luminance, extreme[cell]) < DARK) {
            direction[cell] = (byte) Math.signum(change);
            extreme[cell] = luminance;
            System.arraycopy(times[cell], 1, times[cell], 0, 7);
            times[cell][7] = (float) now;
        }
    }

    private void measure() {
        int[][] sums = new int[rows + 1][columns + 1];
        for (int y = 0; y < rows; y++) {
            for (int x = 0; x < columns; x++) {
                int changes = changes(y * columns + x);
                most = Math.max(most, changes);
                int flashing = changes >= 8 ? 1 : 0;
                sums[y + 1][x + 1] = flashing + sums[y][x + 1] + sums[y + 1][x] - sums[y][x];
            }
        }
        for (int y = 0; y + BLOCK_HEIGHT <= rows; y++) {
            for (int x = 0; x + BLOCK_WIDTH <= columns; x++) {
                int in = sums[y + BLOCK_HEIGHT][x + BLOCK_WIDTH]
                        - sums[y][x + BLOCK_WIDTH]
                        - sums[y + BLOCK_HEIGHT][x]
                        + sums[y][x];
                worst = Math.max(worst, (double) in / (BLOCK_WIDTH * BLOCK_HEIGHT));
            }
        }
    }

    private int changes(int cell) {
        int count = 0;
        for (float time : times[cell]) {
            count += now - time < 1 ? 1 : 0;
        }
        return count;
    }

    private double luminance(IntBinaryOperator picture, int column, int row) {
        double sum = 0;
        for (int y = row * CELL; y < (row + 1) * CELL; y++) {
            for (int x = column * CELL; x < (column + 1) * CELL; x++) {
                int rgb = picture.applyAsInt(x, y);
                sum += red[rgb >> 16 & 255] + green[rgb >> 8 & 255] + blue[rgb & 255];
            }
        }
        return sum / (CELL * CELL);
    }
}
