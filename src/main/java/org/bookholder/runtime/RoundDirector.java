package org.bookholder.runtime;

import java.util.List;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.bookholder.follow.model.Outcome;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.runtime.record.SessionRecorder;
import org.bookholder.session.LineNotes;
import org.bookholder.session.Mover;
import org.bookholder.session.PickupRound;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.wording.Pickups;

/**
 * Leads the pickup round: brings up each line to pick up until each has been read clean. A reading counts once both ears
 * have agreed on it, in the pause after it or at the latest at a cut; so each pickup is a take of its own. Each step is an
 * event, so that the round goes on after a kill. Confined to the session's thread.
 */
final class RoundDirector {
    /** Seconds for which a tick is shown before the next line comes. */
    static final double TICK_SECONDS = 1.4;

    /** Seconds for which the reason for a repeat is shown before the line comes again. */
    static final double AGAIN_SECONDS = 2.2;

    /** A line is over this many seconds after its last word was read. */
    static final double OVER_SECONDS = 1.2;

    /** A line counts as not heard after this many seconds without a verdict. */
    static final double PATIENCE_SECONDS = 8;

    private static final String UNHEARD = "not heard";

    private final SessionRecorder recorder;
    private final TakeControls takes;
    private final LongSupplier nanoTime;
    private long stepped;
    private ReadingPosition seen = ReadingPosition.START;
    private long moved;

    /** Leads the round of the session in {@code recorder}; {@code nanoTime} is a monotonic clock in nanoseconds. */
    RoundDirector(SessionRecorder recorder, TakeControls takes, LongSupplier nanoTime) {
        this.recorder = recorder;
        this.takes = takes;
        this.nanoTime = nanoTime;
        stepped = nanoTime.getAsLong();
        moved = stepped;
    }

    /** Begins with the first line to pick up, unless the round has begun; returns whether there is a round. */
    boolean begin() {
        if (!round().isOn()) {
            nextAfter(0).ifPresent(line -> goTo(line, PickupRound.NONE));
        }
        return round().isOn();
    }

    /** Goes on with a round that was broken off: its line comes again, or the next one if that is clean by now. */
    boolean goOn() {
        int line = round().line();
        if (round().isOn()) {
            nextAfter(line - 1).ifPresentOrElse(next -> goTo(next, round()), this::end);
        }
        return round().isOn();
    }

    /** A break has cut the take: if its line was still to be read, it comes again. All other steps go on by themselves. */
    void breakOver() {
        if (round().step() == PickupRound.Step.READING && (!takes.rolling() || takes.ending())) {
            goOn();
        }
    }

    void end() {
        if (round().isOn()) {
            enter(PickupRound.NONE);
        }
    }

    /** Leaves the line as it is and goes to the next; ends the round if there is no other. */
    void leave() {
        PickupRound round = round();
        if (round.isOn()) {
            nextAfter(round.line())
                    .filter(next -> next != round.line())
                    .ifPresentOrElse(next -> goTo(next, round), this::end);
        }
    }

    /** Brings up the same line again. */
    void again() {
        if (round().isOn()) {
            goTo(round().line(), round());
        }
    }

    /** Takes the next step if it is time; call it often. Does nothing during a break. */
    void advance() {
        PickupRound round = round();
        SessionState state = recorder.state();
        if (!round.isOn() || state.remarks().breakSince().isPresent()) {
            return;
        }
        LineNotes notes = state.lines().notes(round.line());
        double waited = secondsSince(stepped);
        switch (round.step()) {
            case READING -> read(state, notes);
            case LISTENING -> {
                if ((takes.rolling() || !look(state, notes)) && waited >= PATIENCE_SECONDS) {
                    enter(round.again(UNHEARD));
                }
            }
            case TICKED -> {
                if (waited >= TICK_SECONDS) {
                    nextAfter(round.line()).ifPresentOrElse(next -> goTo(next, round), this::finish);
                }
            }
            case AGAIN -> {
                if (!notes.pickup()) {
                    enter(round.ticking());
                } else if (waited >= AGAIN_SECONDS) {
                    again();
                }
            }
            case OFF -> throw new IllegalStateException("the round is off");
        }
    }

    /** Cuts when the line has been read to its end and nothing follows. */
    private void read(SessionState state, LineNotes notes) {
        ReadingPosition position = state.following().position();
        if (!position.equals(seen)) {
            seen = position;
            moved = nanoTime.getAsLong();
        }
        boolean over = position.line() > notes.line() && secondsSince(moved) >= OVER_SECONDS;
        if (!look(state, notes) && over) {
            enter(round().listening());
            takes.cut();
        }
    }

    /** Whether what was heard decides on the line; the round has its next step then. */
    private boolean look(SessionState state, LineNotes notes) {
        if (!notes.pickup()) {
            enter(round().ticking());
            return true;
        }
        // A marked line may have been clean before: what counts is the attempt that was made in the round.
        int tried = notes.attempts().size();
        if (tried > round().tried() && notes.attempts().get(tried - 1).outcome() == Outcome.MISREAD) {
            enter(round().again(Pickups.said(state, notes.attempts().get(tried - 1))));
            return true;
        }
        return false;
    }

    private void finish() {
        enter(PickupRound.NONE);
        takes.cut();
    }

    private void goTo(int line, PickupRound before) {
        enter(before.at(line, recorder.state().lines().notes(line).attempts().size()));
        ReadingPosition from = leadIn(line);
        seen = from;
        moved = stepped;
        if (takes.rolling() && !takes.ending()) {
            takes.resume();
            takes.goTo(from, Mover.HAND);
        } else {
            takes.next(from);
        }
    }

    /** Where reading begins so that the line before leads in to {@code line}. */
    static ReadingPosition leadIn(int line) {
        return new ReadingPosition(Math.max(1, line - 1), 1);
    }

    private PickupRound round() {
        return recorder.state().round();
    }

    private void enter(PickupRound next) {
        stepped = nanoTime.getAsLong();
        recorder.enter(new SessionEvent.RoundMoved(recorder.state().now(), next));
    }

    private double secondsSince(long time) {
        return (nanoTime.getAsLong() - time) / 1e9;
    }

    /** The next line to pick up after {@code line}, from the top again after the last; empty if none is left. */
    private Optional<Integer> nextAfter(int line) {
        List<Integer> left =
                recorder.state().lines().pickups().stream().map(LineNotes::line).toList();
        return left.stream()
                .filter(l -> l > line)
                .findFirst()
                .or(() -> left.stream().findFirst());
    }
}
