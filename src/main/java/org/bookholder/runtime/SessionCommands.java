package org.bookholder.runtime;

import java.time.InstantSource;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.runtime.record.SessionRecorder;
import org.bookholder.runtime.stage.Latest;
import org.bookholder.script.model.PaceSource;
import org.bookholder.session.Command;
import org.bookholder.session.Mover;
import org.bookholder.session.Remark;
import org.bookholder.session.Request;
import org.bookholder.session.SessionEvent;

/** Carries out people's requests to a running session. Confined to one thread. */
final class SessionCommands implements Command.Handler {
    private final SessionRecorder recorder;
    private final TakeLifecycle takes;
    private final TextRevision text;
    private final RoundDirector round;
    private final CountInDirector countIn;
    private final Latest<Boolean> nextLesson;
    private final InstantSource clock;

    /** Whether the current request has to wait for the end of the take. */
    private boolean waitsForEnd;

    /**
     * Carries out requests.
     *
     * @param nextLesson set to whether the next lesson is to follow when the session has ended
     * @param clock time of day
     */
    SessionCommands(
            SessionRecorder recorder,
            TakeLifecycle takes,
            TextRevision text,
            RoundDirector round,
            CountInDirector countIn,
            Latest<Boolean> nextLesson,
            InstantSource clock) {
        this.recorder = recorder;
        this.takes = takes;
        this.text = text;
        this.round = round;
        this.countIn = countIn;
        this.nextLesson = nextLesson;
        this.clock = clock;
    }

    /**
     * Carries out a request and answers once the journal has saved it. If the request ends a take, answers once that
     * end is saved.
     */
    void ask(Request request, Request.Reply reply) {
        waitsForEnd = false;
        if (RequestHandling.carryOut(request, reply, recorder.state(), this)) {
            if (waitsForEnd) {
                takes.afterEnd(() -> recorder.tellWhetherSaved(reply));
            } else {
                recorder.tellWhetherSaved(reply);
            }
        }
    }

    @Override
    public void hold() {
        takes.hold();
        text.useIfPossible();
    }

    @Override
    public void resume() {
        takes.resume();
    }

    @Override
    public void beginCount() {
        countIn.begin();
    }

    @Override
    public void beginRound() {
        round.begin();
    }

    @Override
    public void endRound() {
        round.end();
    }

    @Override
    public void leaveLine() {
        round.leave();
    }

    @Override
    public void lineAgain() {
        round.again();
    }

    @Override
    public void goTo(ReadingPosition position, Mover mover) {
        takes.goTo(position, mover);
    }

    @Override
    public void add(Remark remark) {
        recorder.enter(new SessionEvent.Remarked(takes.now(), remark));
        if (remark instanceof Remark.BreakOver) {
            round.breakOver();
        }
    }

    @Override
    public void nextTake(ReadingPosition from) {
        waitsForEnd |= takes.next(from);
    }

    @Override
    public void cut() {
        waitsForEnd |= takes.cut();
    }

    @Override
    public void aimPace(int pace, PaceSource source) {
        recorder.enter(new SessionEvent.PaceAimed(takes.now(), pace, source));
    }

    @Override
    public void beginBreak() {
        if (recorder.state().remarks().breakSince().isEmpty()) {
            waitsForEnd |= takes.cut();
            add(new Remark.BreakBegan(clock.instant()));
        }
    }

    @Override
    public void endBreak() {
        if (recorder.state().remarks().breakSince().isPresent()) {
            add(new Remark.BreakOver(clock.instant()));
        }
    }

    @Override
    public void nextLesson() {
        end(true);
    }

    @Override
    public void quit() {
        end(false);
    }

    private void end(boolean another) {
        nextLesson.set(another);
        round.end();
        waitsForEnd |= takes.quit();
    }
}
