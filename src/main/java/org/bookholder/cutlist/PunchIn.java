package org.bookholder.cutlist;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.session.FilmChoices;

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
     * A piece to be framed.
     *
     * @param meets whether it directly follows the one before and is of the same shot; of no meaning for the first
     * @param wish how close someone wants it
     */
    public record Piece(boolean meets, FilmChoices.Framing wish) {}

    /** The framing of each piece, in per cent. After a piece that someone has framed it alternates on from there. */
    public List<Integer> plan(List<Piece> pieces) {
        List<Integer> framings = new ArrayList<>();
        boolean closer = false;
        for (int i = 0; i < pieces.size(); i++) {
            boolean alternates = i > 0 && pieces.get(i).meets() && !closer;
            closer = switch (pieces.get(i).wish()) {
                case PLANNED -> alternates;
                case AS_SHOT -> false;
                case CLOSER -> true;
            };
            framings.add(closer ? closer() : FULL);
        }
        return framings;
    }

    private int closer() {
        int closer = Math.min(step, most);
        return closer < SMALLEST ? FULL : closer;
    }
}
