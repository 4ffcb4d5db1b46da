package org.bookholder.delivery;

import org.bookholder.footage.Film;

/** Brightness measures of one reduced frame, or of the change between two. */
final class Luma {
    /**
     * Brightness below which a pixel is black, and share of such pixels that makes a picture black; common practice.
     */
    private static final int BLACK = 26;

    private static final double BLACK_SHARE = 0.98;

    /** Two pictures count as still if on average they differ by less than a thousandth of full brightness, ... */
    private static final double STILL = 0.255;

    /** ... and by less than this in any part of it, so that a small moving object is noticed. */
    private static final double STILL_PART = 2;

    private static final int PART_WIDTH = 16;
    private static final int PART_HEIGHT = 15;
    private static final int COLUMNS = Film.Viewer.WIDTH / PART_WIDTH;

    private Luma() {}

    static boolean black(byte[] luma) {
        int dark = 0;
        for (byte value : luma) {
            dark += (value & 0xff) < BLACK ? 1 : 0;
        }
        return dark >= BLACK_SHARE * luma.length;
    }

    /** Mean difference of two pictures over all pixels; 255 is full brightness. */
    static double difference(byte[] a, byte[] b) {
        long sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += Math.abs((a[i] & 0xff) - (b[i] & 0xff));
        }
        return (double) sum / a.length;
    }

    /** Whether two pictures are the same, apart from the effects of compression. */
    static boolean still(byte[] a, byte[] b) {
        int[] parts = new int[COLUMNS * (Film.Viewer.HEIGHT / PART_HEIGHT)];
        long sum = 0;
        for (int y = 0; y < Film.Viewer.HEIGHT; y++) {
            for (int x = 0; x < Film.Viewer.WIDTH; x++) {
                int i = y * Film.Viewer.WIDTH + x;
                int off = Math.abs((a[i] & 0xff) - (b[i] & 0xff));
                sum += off;
                parts[y / PART_HEIGHT * COLUMNS + x / PART_WIDTH] += off;
            }
        }
        for (int part : parts) {
            if (part > STILL_PART * PART_WIDTH * PART_HEIGHT) {
                return false;
            }
        }
        return sum <= STILL * a.length;
    }
}
