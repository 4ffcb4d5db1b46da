package org.bookholder.view;

import java.util.Locale;
import org.bookholder.session.SessionState;

/**
 * The figures at the edges. The time left is an estimate and is shown as one: in steps of five seconds, changed only
 * when it has really moved on.
 *
 * @param left seconds left as shown, negative for none
 */
public record Readouts(int left) {
    static final Readouts NONE = new Readouts(-1);

    private static final int STEP = 5;

    /** The figures to show now. */
    Readouts next(SessionState state) {
        double seconds = state.pace().left().seconds();
        boolean moved = left < 0 || Math.abs(seconds - left) >= STEP * 0.8;
        return moved ? new Readouts((int) Math.round(seconds / STEP) * STEP) : this;
    }

    /** Time left in the lesson, in words. */
    String leftText() {
        return left < 0 ? "" : minutes(left) + " left";
    }

    /** The running take and its time, empty if none is running. */
    static String takeText(SessionState state) {
        if (!state.rolling() || state.takes().isEmpty()) {
            return "";
        }
        SessionState.Take take = state.takes().get(state.takes().size() - 1);
        return "take " + take.number() + "  ·  "
                + minutes((long) state.now().since(take.start()).seconds());
    }

    /** A length of time in seconds, as minutes or hours. */
    static String minutes(long seconds) {
        long hours = seconds / 3600;
        String rest = String.format(Locale.ROOT, hours > 0 ? "%02d:%02d" : "%d:%02d", seconds / 60 % 60, seconds % 60);
        return hours > 0 ? hours + ":" + rest : rest;
    }
}
