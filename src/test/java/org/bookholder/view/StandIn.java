package org.bookholder.view;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.follow.model.Outcome;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.session.Command;
import org.bookholder.session.Mover;
import org.bookholder.session.Remark;
import org.bookholder.session.SessionState;

/** Stands in for a session: does at once what it is told, and remembers it. */
public final class StandIn implements Command.Handler {
    private final List<Command> told = new ArrayList<>();
    private SampleState sample;

    public StandIn(SampleState sample) {
        this.sample = sample;
    }

    public SessionState state() {
        return sample.state();
    }

    /** Everything it was told, in order. */
    public List<Command> told() {
        return List.copyOf(told);
    }

    public void tell(Command command) {
        told.add(command);
        command.to(this);
    }

    /** Something else happens. */
    public void becomes(SampleState other) {
        sample = other;
    }

    public SampleState sample() {
        return sample;
    }

    @Override
    public void hold() {
        sample = sample.held(true);
    }

    @Override
    public void resume() {
        sample = sample.held(false);
    }

    @Override
    public void goTo(ReadingPosition position, Mover mover) {
        sample = sample.at(position.line(), position.word()).movedBy(mover);
    }

    @Override
    public void markPickup(int line, String note) {
        sample = sample.outcome(line, Outcome.SKIPPED);
    }

    @Override
    public void nextTake(ReadingPosition from) {
        sample = sample.rolling(true).held(false).at(from.line(), from.word());
    }

    @Override
    public void cut() {
        sample = sample.rolling(false).held(false);
    }

    @Override
    public void add(Remark remark) {}

    @Override
    public void quit() {
        sample = sample.rolling(false);
    }
}
