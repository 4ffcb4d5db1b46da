package org.bookholder.app.reading;

import java.util.Optional;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.bookholder.runtime.EndDeadline;
import org.bookholder.runtime.Reading;
import org.bookholder.runtime.ReadingProgress;
import org.bookholder.session.Request;
import org.bookholder.session.SessionState;
import org.bookholder.session.TakeCommand;
import org.bookholder.session.Troubles;

/**
 * Checks a reading several times a second until it is over: informs its listener and obeys its control. Confined to one
 * thread.
 */
final class ReadingMonitor {
    private static final long PERIOD_MILLIS = 100;
    private static final long NOTICE_NANOS = 2_000_000_000L;

    private final Reading reading;
    private final Supplier<SessionState> states;
    private final ReadingListener listener;
    private final ReadingControl control;
    private final LongSupplier nanoTime;
    private final OwnPaceKeeper pace;
    private Troubles troubles = Troubles.NONE;
    private long noticed;
    private Optional<EndDeadline> deadline = Optional.empty();

    /**
     * Watches a reading.
     *
     * @param states its state as the listener and the control see it
     * @param pace keeps the pace that the presenter takes
     */
    ReadingMonitor(
            Reading reading,
            Supplier<SessionState> states,
            ReadingListener listener,
            ReadingControl control,
            LongSupplier nanoTime,
            OwnPaceKeeper pace) {
        this.pace = pace;
        this.reading = reading;
        this.states = states;
        this.listener = listener;
        this.control = control;
        this.nanoTime = nanoTime;
        this.noticed = nanoTime.getAsLong();
    }

    /**
     * Looks at the reading while the window shows it. Says whether the window must end now: the reading was interrupted, a fault has
     * ended it, or it was ended elsewhere.
     */
    boolean mustEnd() {
        pace.look();
        return control.interrupted()
                || reading.fault().isPresent()
                || reading.progress().over();
    }

    /** Returns when everything is settled, or after an interruption if a part of the program does not stop. */
    void untilOver(boolean showLines) {
        while (!reading.await(PERIOD_MILLIS)) {
            look(showLines);
            if (step() == EndDeadline.Step.STOP) {
                listener.warned("a part of the program does not end and is stopped");
                return;
            }
        }
        look(showLines);
    }

    private void look(boolean showLines) {
        SessionState state = states.get();
        pace.look();
        if (showLines) {
            listener.stateChanged(state, reading.progress().over());
        }
        if (!state.troubles().equals(troubles)) {
            troubles = state.troubles();
            listener.troublesChanged(troubles);
        }
        if (showLines) {
            control.requests().forEach(request -> ask(request, state));
            if (control.finishRequested()) {
                reading.tell(new TakeCommand.Quit());
            }
        }
        endIfInterrupted();
        tellOfTheOpenEar(reading.progress());
    }

    private void ask(Request request, SessionState state) {
        try {
            request.commands(state).forEach(reading::tell);
        } catch (IllegalArgumentException e) {
            listener.warned(String.valueOf(e.getMessage()));
        }
    }

    private void endIfInterrupted() {
        if (control.interrupted() && deadline.isEmpty()) {
            deadline = Optional.of(new EndDeadline(nanoTime));
            reading.tell(new TakeCommand.Quit());
        }
        if (step() == EndDeadline.Step.HURRY) {
            reading.hurry();
        }
    }

    /** What to do about a reading that was interrupted and has not ended. */
    private EndDeadline.Step step() {
        return deadline.map(EndDeadline::step).orElse(EndDeadline.Step.WAIT);
    }

    private void tellOfTheOpenEar(ReadingProgress progress) {
        long now = nanoTime.getAsLong();
        double behind = progress.behind().seconds();
        if (!progress.rolling() && behind >= 1 && now - noticed > NOTICE_NANOS) {
            noticed = now;
            listener.stillListening(behind);
        }
    }
}
