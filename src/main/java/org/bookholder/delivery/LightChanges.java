package org.bookholder.delivery;

import org.bookholder.footage.Film;
import org.bookholder.timing.StreamTime;

/**
 * Follows the relative luminance of each part of the picture. What counts is an opposing change of 10 % or more of the
 * maximum where the darker image is below 0.80 (WCAG 2.2, "general flash and red flash thresholds"; in ITU-R BT.1702, from
 * memory, the same as 20 and 160 of 200 cd/m²). Confined to one thread.
 */
final class LightChanges {
    private static final float CHANGE = 0.10f;
    private static final float DARKER = 0.80f;

    private final FlashChanges changes = new FlashChanges();

    /** The furthest luminance in the present direction; before the first change, that of the first picture. */
    private final float[] extremes = new float[Film.Viewer.COLUMNS * Film.Viewer.ROWS];

    private boolean begun;

    /** The luminance of a part in the picture at this time. */
    void see(int part, float luminance, StreamTime at) {
        if (!begun) {
            extremes[part] = luminance;
            begun = part == extremes.length - 1;
            return;
        }
        float change = luminance - extremes[part];
        int direction = changes.direction(part);
        if (direction * change > 0) {
            extremes[part] = luminance;
        } else if (Math.abs(change) >= CHANGE && Math.min(luminance, extremes[part]) < DARKER) {
            extremes[part] = luminance;
            changes.add(part, change > 0 ? 1 : -1, at);
        }
    }

    FlashChanges changes() {
        return changes;
    }
}
