package org.bookholder.view;

import org.bookholder.view.motion.Aim;
import org.bookholder.view.motion.Motion;
import org.bookholder.view.motion.PositionInterpolator;

/** What motion and lead are a moment later, with those before kept to be compared. */
public final class Later {
    private Later() {}

    public static Motion after(Motion motion, Aim aim, double seconds, double pitch) {
        Motion later = motion.copy();
        later.advance(aim, seconds, pitch);
        return later;
    }

    public static PositionInterpolator after(
            PositionInterpolator lead, int recognised, double usual, boolean going, double seconds) {
        PositionInterpolator later = lead.copy();
        later.advance(recognised, usual, going, seconds);
        return later;
    }
}
