package org.bookholder.view;

import java.util.List;
import java.util.Optional;
import org.bookholder.follow.model.Outcome;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;
import org.bookholder.wording.Pickups;
import org.jspecify.annotations.Nullable;

/**
 * The pickup round: brings each line to pick up to the eye-line, with the line before it as a lead-in, until each has
 * been read clean. A reading counts once both ears have agreed on it, in the pause after it or at the latest at a cut;
 * so each pickup is a take of its own. Reads no clock. Confined to one thread.
 */
final class PickupRound {
    /** Seconds for which a tick is shown before the next line comes. */
    static final double TICK_SECONDS = 1.4;

    /** Seconds for which the reason for a repeat is shown before the line comes again. */
    static final double AGAIN_SECONDS = 2.2;

    /** A line is over this many seconds after its last word was read. */
    static final double OVER_SECONDS = 1.2;

    /** A line counts as not heard after this many seconds without a verdict. */
    static final double PATIENCE_SECONDS = 8;

    private static final String AGAIN_UNHEARD = "not heard";

    private Stage stage = Stage.OFF;
    private int line;
    private int attempts;
    private int cleanCount;
    private String why = "";
    private double since;
    private Optional<ReadingPosition> wanted = Optional.empty();
    private boolean cut;
    private ReadingPosition seen = ReadingPosition.START;
    private double rested;
    private String caption = "";
    private @Nullable SessionState described;
    private Stage describedStage = Stage.OFF;

    private enum Stage {
        OFF,
        READING,
        LISTENING,
        TICKED,
        AGAIN
    }

    boolean isOn() {
        return stage != Stage.OFF;
    }

    /** The line to pick up. */
    int line() {
        return line;
    }

    /** The line used as lead-in; 0 if there is none. */
    int leadIn() {
        return line - 1;
    }

    /** The line that was just read clean; 0 if none was. */
    int ticked() {
        return stage == Stage.TICKED ? line : 0;
    }

    /** The progress of the round in a few words; empty if there is no round. */
    String caption() {
        return isOn() ? caption : "";
    }

    /** Starts with the first line to pick up; returns whether there is one. */
    boolean begin(SessionState state) {
        cleanCount = 0;
        return goTo(nextAfter(0, state), state);
    }

    void end() {
        stage = Stage.OFF;
        wanted = Optional.empty();
    }

    /** Leaves the line as it is and goes to the next; ends the round if there is no other. */
    void skip(SessionState state) {
        Optional<Integer> next = nextAfter(line, state);
        if (next.isEmpty() || next.get() == line || !goTo(next, state)) {
            end();
        }
    }

    /** Brings the same line again. */
    void again(SessionState state) {
        goTo(Optional.of(line), state);
    }

    /** Advances by {@code seconds}; returns whether the round has just finished with nothing left. */
    boolean advance(SessionState state, double seconds) {
        if (!isOn()) {
            return false;
        }
        since += seconds;
        LineNotes notes = state.lines().notes(line);
        switch (stage) {
            case READING -> read(state, notes, seconds);
            case LISTENING -> {
                if (!state.takes().rolling()) {
                    look(state, notes);
                }
                if (stage == Stage.LISTENING && since >= PATIENCE_SECONDS) {
                    once(AGAIN_UNHEARD);
                }
            }
            case TICKED -> {
                if (since >= TICK_SECONDS && !goTo(nextAfter(line, state), state)) {
                    cut = state.takes().rolling();
                    end();
                    return true;
                }
            }
            case AGAIN -> {
                if (!notes.pickup()) {
                    tick();
                } else if (since >= AGAIN_SECONDS) {
                    again(state);
                }
            }
            case OFF -> throw new IllegalStateException("the round is off");
        }
        describe(state);
        return false;
    }

    /** The position to move to; returned only once. */
    Optional<ReadingPosition> takeWanted() {
        Optional<ReadingPosition> taken = wanted;
        wanted = Optional.empty();
        return taken;
    }

    /** Whether the take should be cut; true only once. */
    boolean takeCut() {
        boolean taken = cut;
        cut = false;
        return taken;
    }

    /** Updates the caption when the round or the session has changed. */
    @SuppressWarnings("ReferenceEquality")
    private void describe(SessionState state) {
        if (state == described && stage == describedStage) {
            return;
        }
        described = state;
        describedStage = stage;
        int left = state.lines().pickups().size();
        caption = switch (stage) {
            case OFF -> "";
            case READING -> "pickup " + (cleanCount + 1) + " of " + (cleanCount + Math.max(1, left));
            case LISTENING -> "listening back";
            case TICKED -> left == 0 ? "clean, and the last" : "clean";
            case AGAIN -> "once more: " + why;
        };
    }

    /** Cuts when the line has been read to its end and nothing follows. */
    private void read(SessionState state, LineNotes notes, double seconds) {
        look(state, notes);
        rested = state.following().position().equals(seen) ? rested + seconds : 0;
        seen = state.following().position();
        if (stage == Stage.READING && state.following().position().line() > line && rested >= OVER_SECONDS) {
            stage = Stage.LISTENING;
            since = 0;
            cut = state.takes().rolling();
        }
    }

    private void look(SessionState state, LineNotes notes) {
        if (!notes.pickup()) {
            tick();
        } else if (notes.attempts().size() > attempts && notes.outcome() == Outcome.MISREAD) {
            once(Pickups.of(state, notes).said());
        }
    }

    private void once(String reason) {
        stage = Stage.AGAIN;
        why = reason;
        since = 0;
    }

    private void tick() {
        stage = Stage.TICKED;
        cleanCount++;
        since = 0;
    }

    private boolean goTo(Optional<Integer> next, SessionState state) {
        if (next.isEmpty()) {
            return false;
        }
        line = next.get();
        attempts = state.lines().notes(line).attempts().size();
        stage = Stage.READING;
        since = 0;
        rested = 0;
        cut = false;
        described = null;
        wanted = Optional.of(new ReadingPosition(Math.max(1, line - 1), 1));
        return true;
    }

    /**
     * The next line to pick up after {@code line}, starting again from the top after the last; empty if none is left.
     */
    private static Optional<Integer> nextAfter(int line, SessionState state) {
        List<Integer> left =
                state.lines().pickups().stream().map(LineNotes::line).toList();
        return left.stream()
                .filter(l -> l > line)
                .findFirst()
                .or(() -> left.stream().findFirst());
    }
}
