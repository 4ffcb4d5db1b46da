package org.bookholder.cutlist;

import java.util.ArrayList;
import java.util.List;

/**
 * Plans the framing. Where two pieces of the same shot meet, the framing alternates, so that the jump of the speaker's
 * head looks like a change of shot (common practice).
 *
 * @param step how much closer the closer framing is, in per cent of the full picture's size, 100 or more
 * @param most the closest framing that source and delivery allow without loss, likewise
 */
public record PunchIn(int step, int most) {
    /** The full picture. */
    public static final int FULL = 100;

    /** Large enough to look like another shot, small enough to lose little of the frame. */
    public static final int DEFAULT_STEP = 115;

    /** A smaller step would look like a mistake and is not used. */
    private static final int SMALLEST = 108;

    /** Checks the ranges. */
    public PunchIn {
        if (step < FULL || most < FULL) {
            throw new IllegalArgumentException(
                    "step (" + step + ") and most (" + most + ") must be " + FULL + " per cent or more");
        }
    }

    /** The closest framing, in per cent, at which each delivered pixel still has at least one source pixel. */
    public static int most(int sourceWidth, int sourceHeight, int deliveryWidth, int deliveryHeight) {
        if (sourceWidth < 1 || sourceHeight < 1 || deliveryWidth < 1 || deliveryHeight < 1) {
            throw new IllegalArgumentException("widths and heights must be positive");
        }
        int across = FULL * sourceWidth / deliveryWidth;
        int down = FULL * sourceHeight / deliveryHeight;
        return Math.max(FULL, Math.min(across, down));
    }

    /** Whether a large enough closer framing is possible. */
    public boolean possible() {
        return closer() > FULL;
    }

    /**
     * The framing of each piece, in per cent.
     *
     * @param meets for each piece, whether it directly follows the one before and is of the same shot; the first entry
     *     is ignored
     */
    public List<Integer> plan(List<Boolean> meets) {
        List<Integer> framings = new ArrayList<>();
        boolean closer = false;
        for (int i = 0; i < meets.size(); i++) {
            closer = i > 0 && meets.get(i) && !closer;
            framings.add(closer ? closer() : FULL);
        }
        return framings;
    }

    private int closer() {
        int closer = Math.min(step, most);
        return closer < SMALLEST ? FULL : closer;
    }
}
