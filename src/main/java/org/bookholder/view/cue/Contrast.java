package org.bookholder.view.cue;

/**
 * Luminance and contrast of colours given as 0xRRGGBB in sRGB, by the definitions of WCAG 2.2 (relative luminance,
 * contrast ratio).
 */
public final class Contrast {
    private static final double LINEAR_LIMIT = 0.04045;
    private static final double FLARE = 0.05;

    private Contrast() {}

    /** Relative luminance, 0 for black to 1 for white. */
    public static double luminance(int rgb) {
        return 0.2126 * linear(rgb >> 16 & 255) + 0.7152 * linear(rgb >> 8 & 255) + 0.0722 * linear(rgb & 255);
    }

    /** Contrast ratio of two colours in either order, 1 to 21, not rounded. */
    public static double ratio(int one, int other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + FLARE) / (Math.min(a, b) + FLARE);
    }

    private static double linear(int channel) {
        double c = channel / 255.0;
        return c <= LINEAR_LIMIT ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }
}
