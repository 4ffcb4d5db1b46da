package org.bookholder.view.cue;

import java.util.Optional;
import org.bookholder.session.CountIn;
import org.bookholder.session.SessionState;
import org.bookholder.view.input.Action;
import org.bookholder.view.input.KeyMap;

/** Shows the count-in of a take, smoothly between the session's steps. Reads no clock. Confined to one thread. */
public final class CountDisplay {
    private static final int WAITING = -1;

    private Optional<CountIn> counted = Optional.empty();
    private double left;
    private String text = "";
    private int shown;

    /** Advances by {@code seconds}. */
    public void advance(SessionState state, double seconds) {
        Optional<CountIn> now = state.takes().countIn();
        if (now.equals(counted)) {
            left = Math.max(0, left - seconds);
        } else {
            counted = now;
            left = now.map(CountIn::seconds).orElse(0);
        }
    }

    /** What to show: the number, or which key starts the count; empty while there is nothing to count. */
    public String text(KeyMap keys) {
        boolean waiting = counted.filter(CountIn::waiting).isPresent();
        int now = waiting ? WAITING : (int) Math.ceil(left);
        if (now != shown) {
            shown = now;
            text = waiting ? keys.first(Action.HOLD) + " begins" : now > 0 ? Integer.toString(now) : "";
        }
        return text;
    }
}
