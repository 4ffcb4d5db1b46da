package org.bookholder.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.follow.model.Outcome;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.script.model.PaceSource;
import org.bookholder.session.Command;
import org.bookholder.session.CountIn;
import org.bookholder.session.Mover;
import org.bookholder.session.PickupRound;
import org.bookholder.session.Remark;
import org.bookholder.session.SessionState;
import org.bookholder.timing.StreamTime;
import org.bookholder.view.settings.WindowSettings;

/** Stands in for a session: does at once what it is told, and remembers it. */
public final class StandIn implements Command.Handler {
    private final List<Command> told = new ArrayList<>();
    private SampleState sample;
    private PickupRound round = PickupRound.NONE;
    private Optional<CountIn> count = Optional.empty();

    public StandIn(SampleState sample) {
        this.sample = sample;
    }

    public SessionState state() {
        SessionState state = sample.state().with(round);
        return count.map(state::with).orElse(state);
    }

    /** The reading window of this session, on a screen of 1920 by 1080 pixels. */
    public Scene scene() {
        return new Scene(
                state().script(),
                WindowSettings.defaults(),
                new Plain(),
                new Scene.Screen(1920, 1080, 1080, 0),
                state().following().position());
    }

    /** The pickup round comes to this step. */
    public void comesTo(PickupRound step) {
        round = step;
    }

    /** The count-in waits (0), counts so many seconds, or is over (empty). */
    public void counts(Optional<Integer> seconds) {
        count = seconds.map(length -> new CountIn(StreamTime.ZERO, length));
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
    public void beginCount() {}

    @Override
    public void aimPace(int pace, PaceSource source) {}

    @Override
    public void beginBreak() {}

    @Override
    public void endBreak() {}

    @Override
    public void nextLesson() {}

    @Override
    public void beginRound() {}

    @Override
    public void endRound() {}

    @Override
    public void leaveLine() {}

    @Override
    public void lineAgain() {}

    @Override
    public void goTo(ReadingPosition position, Mover mover) {
        sample = sample.at(position.line(), position.word()).movedBy(mover);
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
    public void add(Remark remark) {
        if (remark instanceof Remark.Signed signed && signed.remark() instanceof Remark.Noted noted) {
            sample = sample.outcome(noted.line(), Outcome.SKIPPED);
        }
    }

    @Override
    public void quit() {
        sample = sample.rolling(false);
    }
}
