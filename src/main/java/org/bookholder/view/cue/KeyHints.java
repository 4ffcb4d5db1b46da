package org.bookholder.view.cue;

import org.bookholder.session.SessionState;
import org.bookholder.view.input.Action;
import org.bookholder.view.input.KeyMap;
import org.jspecify.annotations.Nullable;

/**
 * The keys that are needed at the beginning and while the take is held, with the names that they have now. Mutable, so that
 * pictures create no garbage. Confined to one thread.
 */
public final class KeyHints {
    private @Nullable KeyMap keys;
    private String opening = "";
    private String held = "";
    private String heldBeside = "";

    public KeyHints() {}

    /** What to show; empty while somebody reads, and when the take is over. */
    public String text(SessionState state, Opening start, KeyMap now) {
        write(now);
        if (!state.takes().rolling()) {
            return "";
        }
        if (state.takes().held() && state.takes().countIn().isEmpty()) {
            return held;
        }
        return start.light() > 0 ? opening : "";
    }

    /** What stands beside the mark while the take is held. */
    public String held(KeyMap now) {
        write(now);
        return heldBeside;
    }

    @SuppressWarnings("ReferenceEquality")
    private void write(KeyMap now) {
        if (now == keys) {
            return;
        }
        keys = now;
        opening = now.first(Action.HOLD) + ": hold  ·  " + now.first(Action.MARK_PICKUP) + ": mark a pickup  ·  "
                + now.first(Action.KEYS) + ": all keys";
        heldBeside = "held; " + now.first(Action.HOLD) + ":\u00a0go\u00a0on";
        held = now.first(Action.BACK_LINE) + ": back a line  ·  " + now.first(Action.NEXT_TAKE) + ": new take  ·  "
                + now.first(Action.KEYS) + ": all keys";
    }
}
