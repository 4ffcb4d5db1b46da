package org.bookholder.view.cue;

import java.util.function.Consumer;
import org.bookholder.session.Command;
import org.bookholder.session.SessionState;
import org.bookholder.session.TakeCommand;
import org.bookholder.view.input.Action;
import org.bookholder.view.input.KeyMap;

/**
 * The count-in before a take: the take starts and is held, is counted in, and then continues. Before the first take the
 * count-in waits for a key. Reads no clock. Confined to one thread.
 */
public final class CountIn {
    private static final int WAITING = -1;

    private int counted;
    private boolean waiting;
    private double left;
    private boolean heldOver;
    private String text = "";
    private int shown;

    /** Starts after take number {@code takes}, which no longer needs a count-in. */
    public CountIn(int takes) {
        counted = takes;
    }

    /**
     * Advances by {@code seconds}.
     *
     * @param length seconds to count down from, 0 for no count-in
     * @param tell receives the commands for the session
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

    /** Call when the text changes during a hold: the take that replaces the held one then waits for a key, too. */
    public void textChangedInHold() {
        heldOver = true;
    }

    /** Starts the count if it is waiting, stops it if it is running; returns whether it did either. */
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

    /** What to show: the number, or which key starts the count; empty while there is nothing to count. */
    public String text(KeyMap keys) {
        int now = waiting ? WAITING : (int) Math.ceil(left);
        if (now != shown) {
            shown = now;
            text = waiting ? keys.first(Action.HOLD) + " begins" : now > 0 ? Integer.toString(now) : "";
        }
        return text;
    }
}
