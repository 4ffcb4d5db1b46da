package org.bookholder.view.cue;

import java.util.List;
import org.bookholder.session.SessionState;
import org.bookholder.session.Trouble;
import org.bookholder.session.Troubles;
import org.bookholder.wording.TroubleText;
import org.jspecify.annotations.Nullable;

/**
 * The session's troubles in words. What is wrong stays as long as it is; what the presenter only has to know is shown once,
 * for some seconds. Mutable, so that pictures create no garbage. Confined to one thread.
 */
public final class Notices {
    private static final double SECONDS = 8;
    private static final double FADE_SECONDS = 0.8;

    private @Nullable Troubles seen;
    private String wrong = "";
    private String notice = "";
    private double left;

    public Notices() {}

    /** Advances by {@code seconds}. */
    @SuppressWarnings("ReferenceEquality")
    public void advance(SessionState state, double seconds) {
        left = Math.max(0, left - seconds);
        if (state.troubles() == seen) {
            return;
        }
        Troubles current = state.troubles();
        seen = current;
        wrong = text(current, false);
        String now = text(current, true);
        if (!now.equals(notice)) {
            notice = now;
            left = SECONDS;
        }
    }

    /** What is wrong; empty if nothing is. */
    public String wrong() {
        return wrong;
    }

    /** What the presenter has to know; empty if there is nothing. */
    public String notice() {
        return notice;
    }

    /** Opacity of the notice while somebody may be reading, 0 to 1. */
    public double light() {
        return Math.min(1, left / FADE_SECONDS);
    }

    private static String text(Troubles troubles, boolean notices) {
        List<Trouble> some = troubles.all().stream()
                .filter(trouble -> trouble.kind().isNotice() == notices)
                .toList();
        return TroubleText.of(new Troubles(some));
    }
}
