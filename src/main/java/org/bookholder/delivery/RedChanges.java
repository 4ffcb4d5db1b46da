package org.bookholder.delivery;

import org.bookholder.footage.Film;
import org.bookholder.timing.StreamTime;

/**
 * Follows how red each part of the picture is. What counts is an opposing change to or from a saturated red, R/(R+G+B) of
 * 0.8 or more, with a difference of more than 0.2 in the CIE 1976 UCS diagram (WCAG 2.2, "general flash and red flash
 * thresholds"). Confined to one thread.
 */
final class RedChanges {
    private static final float SATURATED = 0.8f;
    private static final double DIFFERENCE = 0.2;

    /**
     * Added to each channel, so that black is neutral and a red is saturated from 1/16 of full light on. That is where the
     * older form of the rule begins: (R-G-B) x 320 above 20.
     */
    private static final float DARK = 0.0089f;

    private final FlashChanges changes = new FlashChanges();
    private final float[] reds = new float[Film.Viewer.COLUMNS * Film.Viewer.ROWS];
    private final float[] us = new float[reds.length];
    private final float[] vs = new float[reds.length];
    private boolean begun;

    /** The linear light of a part in the picture at this time, each channel from 0 to 1. */
    void see(int part, float red, float green, float blue, StreamTime at) {
        float r = red + DARK;
        float g = green + DARK;
        float b = blue + DARK;
        float share = r / (r + g + b);
        int direction = changes.direction(part);
        if (!begun || direction * (share - reds[part]) > 0) {
            keep(part, share, r, g, b);
            begun |= part == reds.length - 1;
        } else if (Math.max(share, reds[part]) >= SATURATED && differs(part, r, g, b)) {
            changes.add(part, share > reds[part] ? 1 : -1, at);
            keep(part, share, r, g, b);
        }
    }

    FlashChanges changes() {
        return changes;
    }

    private void keep(int part, float share, float r, float g, float b) {
        reds[part] = share;
        us[part] = u(r, g, b);
        vs[part] = v(r, g, b);
    }

    private boolean differs(int part, float r, float g, float b) {
        return Math.hypot(u(r, g, b) - us[part], v(r, g, b) - vs[part]) > DIFFERENCE;
    }

    /** u' = 4X / (X + 15Y + 3Z), with X, Y, Z of linear sRGB (IEC 61966-2-1). */
    private static float u(float r, float g, float b) {
        return 4 * (0.4124f * r + 0.3576f * g + 0.1805f * b) / sum(r, g, b);
    }

    /** v' = 9Y / (X + 15Y + 3Z). */
    private static float v(float r, float g, float b) {
        return 9 * (0.2126f * r + 0.7152f * g + 0.0722f * b) / sum(r, g, b);
    }

    private static float sum(float r, float g, float b) {
        return 0.4124f * r
                + 0.3576f * g
                + 0.1805f * b
                + 15 * (0.2126f * r + 0.7152f * g + 0.0722f * b)
                + 3 * (0.0193f * r + 0.1192f * g + 0.9505f * b);
    }
}
