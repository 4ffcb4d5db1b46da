package org.bookholder.view.cue;

/**
 * The colours of the reading window, as 0xRRGGBB. The background is pure black so that the glass before a lens does not
 * glow.
 */
public final class Palette {
    /** Background. */
    public static final int GROUND = 0x000000;

    /** Words that are still to be read. */
    public static final int COMING = 0xF6EDDD;

    /** Words that were spoken: dimmed, still legible. */
    public static final int SPOKEN = 0x857A6C;

    /** Words of the lead-in before a line to pick up. */
    public static final int LEAD_IN = 0xBDB09C;

    /** Words that are not read in the pickup round. */
    public static final int RESTING = 0x3A342D;

    /** The tick at a line that was read clean in the pickup round. */
    public static final int TICK = 0x9CC7A0;

    /** Directions, which are not spoken. */
    public static final int DIRECTION = 0x7FB6C4;

    /** Directions that have been passed. */
    public static final int DIRECTION_PAST = 0x4F6E76;

    /** Figures and words at the edges. */
    public static final int FIGURE = 0xA79D8E;

    /** Words that need attention: a question, a problem, an overdue break. */
    public static final int ASKING = 0xF2C48B;

    /** The marks at the eye-line. */
    public static final int FOOTLIGHT = 0xB9BFAE;

    /** Thin auxiliary lines: the lesson's progress line, the reed's level. */
    public static final int HAIRLINE = 0x4A443C;

    /** The reed when the reading is on pace. */
    public static final int ON_PACE = 0xCFC6B4;

    /** The reed when the reading is fast. */
    public static final int FAST = 0xF2A65A;

    /** The reed when the reading is slow. */
    public static final int SLOW = 0x7FB6C4;

    /** Lit side of a folded page corner. */
    public static final int DOG_EAR = 0xEBCB9E;

    /** Shaded side of a folded page corner. */
    public static final int DOG_EAR_SHADE = 0x8C7450;

    private Palette() {}

    /** Mixes two colours channel by channel; {@code share} 0 gives {@code from}, 1 gives {@code to}. */
    public static int mix(int from, int to, double share) {
        double s = Math.max(0, Math.min(1, share));
        int red = channel(from >> 16 & 255, to >> 16 & 255, s);
        int green = channel(from >> 8 & 255, to >> 8 & 255, s);
        int blue = channel(from & 255, to & 255, s);
        return red << 16 | green << 8 | blue;
    }

    private static int channel(int from, int to, double share) {
        return (int) Math.round(from + (to - from) * share);
    }
}
