package org.bookholder.view.settings;

/**
 * Converts between the size of letters and the angle they subtend at the eye. Angles are in minutes of arc; all lengths
 * of one call are in the same unit.
 *
 * <p>NUREG-0700 rev. 2, item 1.3.1-4: text characters of 16 minutes or more, 20 to 22 preferred.
 */
public final class TypeSize {
    /** The smallest capital height for text. */
    public static final double LEAST_ARC_MINUTES = 16;

    /** The least of the preferred capital heights: that of figures and advice, which are read at a glance. */
    public static final double PREFERRED_ARC_MINUTES = 20;

    /** The largest capital height for running text; larger characters are not read any better. */
    public static final double MOST_ARC_MINUTES = 45;

    /** Height of a capital letter in the typeface Inter, in ems. */
    public static final double CAPITAL_EMS = 2048.0 / 2816.0;

    private static final double TURN_MINUTES = 21_600;

    private TypeSize() {}

    /** The capital height that subtends {@code arcMinutes} at {@code distance}: H = 6.283 D MA / 21600. */
    public static double capitalHeight(double distance, double arcMinutes) {
        if (!(distance > 0)) {
            throw new IllegalArgumentException("distance (" + distance + ") must be positive");
        }
        return 6.283 * distance * arcMinutes / TURN_MINUTES;
    }

    /** The angle that a capital of {@code height} subtends at {@code distance}. */
    public static double arcMinutes(double distance, double height) {
        if (!(distance > 0)) {
            throw new IllegalArgumentException("distance (" + distance + ") must be positive");
        }
        return height * TURN_MINUTES / (6.283 * distance);
    }

    /** The type size in pixels that gives capitals {@code height} mm high on a screen of the given height. */
    public static double em(double height, double screenHeight, int screenPixels) {
        return height / screenHeight * screenPixels / CAPITAL_EMS;
    }
}
