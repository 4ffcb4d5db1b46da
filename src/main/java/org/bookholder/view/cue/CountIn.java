package org.bookholder.view.cue;

import java.util.function.Consumer;
import org.bookholder.session.Command;
import org.bookholder.session.SessionState;
import org.bookholder.session.TakeCommand;
import org.bookholder.view.input.Action;
import org.bookholder.view.input.KeyMap;

/**
 * The count before a take is read: the take is rolled and held, then counted in, then goes on. Before the first take it
 * waits to be asked. Knows no clock. Confined to one thread.
 */
public final class CountIn {
    private static final int WAITING = -1;

    private int counted;
    private boolean waiting;
    private double left;
    private boolean heldOver;
    private String text = "";
    private int shown;

    /** Takes up to {@code takes} have been counted in. */
    public CountIn(int takes) {
        counted = takes;
    }

    /**
     * Lets time pass.
     *
     * @param length seconds to count from, 0 for no count-in
     * @param tell takes what the session is to be told
     */
    public void advance(SessionState state, int length, double seconds, Consumer<Command> tell) {
        boolean fresh = state.takes().rolling() && state.takes().count() > counted;
        if (fresh) {
            waiting = (counted == 0 || heldOver) && length > 0;
            heldOver = false;
            left = waiting ? 0 : length;
            counted = state.takes().count();
            if (length > 0) {
                tell.accept(new TakeCommand.Hold());
            }
        } else if (left > 0 && state.takes().held()) {
            left -= seconds;
            if (left <= 0) {
                tell.accept(new TakeCommand.Resume());
            }
        } else if (left > 0 && !state.takes().rolling()) {
            left = 0;
        }
        waiting = waiting && state.takes().rolling();
    }

    /** The text was changed in a hold: the take that takes the held one's place waits to be asked, too. */
    public void textChangedInHold() {
        heldOver = true;
    }

    /** Begins to count if it waits, and stops the count if one runs; says whether it did either. */
    public boolean pressed(int length, Consumer<Command> tell) {
        if (waiting) {
            waiting = false;
            left = length;
            return true;
        }
        if (left > 0) {
            left = 0;
            tell.accept(new TakeCommand.Resume());
            return true;
        }
        return false;
    }

    /** What to show: the number, or which key begins; empty while there is nothing to count. */
    public String text(KeyMap keys) {
        int now = waiting ? WAITING : (int) Math.ceil(left);
        if (now != shown) {
            shown = now;
            text = waiting ? keys.first(Action.HOLD) + " begins" : now > 0 ? Integer.toString(now) : "";
        }
        return text;
    }
}
