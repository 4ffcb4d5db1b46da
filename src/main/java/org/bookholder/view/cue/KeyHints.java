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
    private String openingKeys = "";
    private String opening = "";
    private String writtenSource = "";
    private String writtenNotice = "";
    private String held = "";
    private String heldBeside = "";

    public KeyHints() {}

    /**
     * What to show; empty while somebody reads, and when the take is over.
     *
     * @param notice what else has to be known at the opening; may be empty
     */
    public String text(SessionState state, Opening start, String notice, KeyMap now) {
        write(now);
        if (!state.takes().rolling() || state.takes().all().isEmpty()) {
            return "";
        }
        if (start.light() > 0) {
            return opening(state.takes().last().audio(), notice);
        }
        return state.takes().held() && state.takes().countIn().isEmpty() ? held : "";
    }

    /** What is heard, what has to be known, and the keys. */
    private String opening(String source, String notice) {
        if (!source.equals(writtenSource) || !notice.equals(writtenNotice)) {
            writtenSource = source;
            writtenNotice = notice;
            opening = "";
        }
        if (opening.isEmpty()) {
            String heard = source.isEmpty() ? "" : "Listening to " + source + "  ·  ";
            opening = heard + openingKeys + (notice.isEmpty() ? "" : "  ·  " + notice);
        }
        return opening;
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
        opening = "";
        openingKeys = now.first(Action.HOLD) + ": hold  ·  " + now.first(Action.MARK_PICKUP) + ": mark a pickup  ·  "
                + now.first(Action.KEYS) + ": all keys";
        heldBeside = "held; " + now.first(Action.HOLD) + ":\u00a0go\u00a0on";
        held = now.first(Action.BACK_LINE) + ": back a line  ·  " + now.first(Action.NEXT_TAKE) + ": new take  ·  "
                + now.first(Action.KEYS) + ": all keys";
    }
}
