package org.bookholder.session;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.bookholder.fatigue.FatigueClocks.Doing;
import org.bookholder.fatigue.FatigueLog;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.FollowState;
import org.bookholder.pace.PaceLog;
import org.bookholder.pace.PaceOfLine;
import org.bookholder.pace.WordCounts;
import org.bookholder.script.model.Script;
import org.bookholder.timing.StreamTime;
import org.pcollections.PVector;
import org.pcollections.TreePVector;

/** A mutable copy of a state, used only while events are applied. */
final class StateBuilder implements SessionEventHandler {
    private final SessionState before;
    private Script script;
    private StreamTime now;
    private Takes takes;
    private Following following;
    private PVector<Aside> asides;
    private Sound sound;
    private Troubles troubles;
    private Remarks remarks;
    private PickupRound round;
    private WordCounts counts;
    private PaceLog pace;
    private FatigueLog fatigue;
    private TimeSpent spent;
    private LineIndex heard;
    private UnjudgedLines unjudged;

    StateBuilder(SessionState before) {
        this.before = before;
        script = before.script();
        now = before.now();
        takes = before.takes();
        following = before.following();
        asides = before.lines().asides();
        sound = before.measures().sound();
        troubles = before.troubles();
        remarks = before.remarks();
        round = before.round();
        counts = before.sums().counts();
        pace = before.sums().pace();
        fatigue = before.sums().fatigue();
        spent = before.sums().spent();
        heard = before.sums().heard();
        unjudged = before.sums().unjudged();
    }

    /** Applies an event. The displayed pace also depends on what was displayed before. */
    void take(SessionEvent event) {
        passTo(event.at());
        event.to(this);
        pace = pace.shown(script.settings().targetPace());
    }

    /** Counts the time until now as it was spent; a late event does not turn time back. */
    private void passTo(StreamTime at) {
        if (!now.isBefore(at)) {
            return;
        }
        if (takes.rolling()) {
            boolean reading = !takes.held() && following.position().line() <= counts.lines();
            if (reading && following.certainty() == FollowState.FOLLOWING) {
                pace = pace.advance(at.since(now));
            }
            Doing doing = takes.held() ? Doing.RESTING : reading && takes.begun() ? Doing.READING : Doing.STANDING_BY;
            Duration length = at.toDuration().minus(now.toDuration());
            fatigue = fatigue.advance(length, doing);
            spent = spent.plus(length, doing);
            takes = takes.reached(at);
        }
        now = at;
    }

    @Override
    public void opened(SessionEvent.Opened event) {
        cutIfRolling();
    }

    @Override
    public void dayCarried(SessionEvent.DayCarried event) {
        fatigue = fatigue.after(event.day().reading(), now);
        takes = takes.resting(event.day().until());
    }

    @Override
    public void paceAimed(SessionEvent.PaceAimed event) {
        script = script.with(script.settings().aimed(event.pace(), event.source()));
    }

    @Override
    public void textChanged(SessionEvent.TextChanged event) {
        Script changed = event.script(script);
        Renumbering lines = Renumbering.between(script, changed);
        counts = WordCounts.of(changed);
        heard = heard.renumbered(lines, counts.lines());
        unjudged = unjudged.renumbered(lines);
        remarks = remarks.renumbered(lines);
        asides = TreePVector.from(lines.asides(asides));
        following = following.movedTo(lines.position(following.position()), following.mover());
        round = round.renumbered(lines);
        script = changed;
    }

    @Override
    public void takeStarted(SessionEvent.TakeStarted event) {
        cutIfRolling();
        fatigue = fatigue.rested(takes.restingSince(), event.when(), now);
        remarks = remarks.withBreak(Optional.empty());
        takes = takes.rolled(new Take(event.take(), now, now, event.when(), event.audio()));
        following = Following.from(event.from());
        heard = heard.begun(event.take(), event.from().line(), round);
        pace = pace.takeChanged(event.take());
        troubles = troubles.takeStarted(!event.audio().isEmpty());
    }

    @Override
    public void takeEnded(SessionEvent.TakeEnded event) {
        endTake(event.when());
    }

    /** Ends a take that the program left without cutting it: it lasted as long as there is audio. */
    private void cutIfRolling() {
        if (takes.rolling()) {
            endTake(takes.last().ended());
        }
    }

    private void endTake(Instant when) {
        takes = takes.cut(now, when);
        following = following.with(FollowState.FOLLOWING);
        pace = pace.takeChanged(pace.take());
    }

    @Override
    public void positionMoved(SessionEvent.PositionMoved event) {
        boolean jump = event.wordsRead() == 0;
        if (takes.rolling() && !(jump && event.mover() == Mover.VOICE)) {
            takes = takes.begin();
        }
        if (takes.rolling() && !takes.held() && event.mover() != Mover.HAND) {
            pace = pace.read(event.wordsRead());
        }
        // Lines that the voice reads one after another still get their attempts; lines that it jumped over do not. A
        // move by hand past lines says nothing about them.
        if (jump) {
            heard = event.mover() == Mover.VOICE
                    ? heard.jumped(following.position().line(), event.position().line())
                    : heard.noneLeftOut();
        }
        following = following.movedTo(event.position(), event.mover());
    }

    @Override
    public void followChanged(SessionEvent.FollowChanged event) {
        following = following.with(event.state());
    }

    @Override
    public void attemptSettled(SessionEvent.AttemptSettled event) {
        Attempt attempt = event.attempt();
        takeBack(heard.attempt(attempt.take(), attempt.ordinal()));
        add(attempt);
        if (!takes.rolling() || following.position().line() > counts.lines()) {
            pace = pace.settle(attempt.take(), measure().of(attempt.take(), heard.attempts(attempt.take())));
        }
    }

    @Override
    public void takeSettled(SessionEvent.TakeSettled event) {
        takeBack(heard.attempts(event.take()));
        event.attempts().forEach(this::add);
        heard = heard.noneLeftOut();
        asides = Lines.asidesWith(asides, event.take(), event.asides());
        pace = pace.settle(event.take(), measure().of(event.take(), event.attempts()));
    }

    @Override
    public void asidesHeard(SessionEvent.AsidesHeard event) {
        asides = Lines.asidesWith(asides, event.take(), event.asides());
    }

    private void add(Attempt attempt) {
        heard = heard.with(attempt);
        PaceOfLine measured = measure().of(attempt);
        pace = pace.plus(measured);
        fatigue = fatigue.plus(attempt, measured);
    }

    private void takeBack(List<Attempt> attempts) {
        heard = heard.without(attempts);
        for (Attempt attempt : attempts) {
            PaceOfLine measured = measure().of(attempt);
            pace = pace.minus(measured);
            fatigue = fatigue.minus(attempt, measured);
        }
    }

    private TakePace measure() {
        return new TakePace(counts, pace.rules().pause(), asides, takes.holds());
    }

    @Override
    public void pickupMarked(SessionEvent.PickupMarked event) {
        int line = Math.min(event.line(), counts.lines());
        heard = heard.marked(event.at(), line, event.note());
        remarks = remarks.noted(new Note(0, event.at(), line, event.note(), Person.PRESENTER, true));
    }

    @Override
    public void remarked(SessionEvent.Remarked event) {
        event.remark().to(new Remarking(event.at()));
    }

    /** Applies remarks. */
    private final class Remarking implements Remark.Handler {
        private final StreamTime at;
        private String author = "";

        Remarking(StreamTime at) {
            this.at = at;
        }

        @Override
        public void signed(Remark.Signed remark) {
            author = remark.author();
            remark.remark().to(this);
            remarks = remarks.named(remark.name());
        }

        @Override
        public void noted(Remark.Noted remark) {
            int line = Math.min(remark.line(), counts.lines());
            heard = remark.pickup() ? heard.marked(at, line, remark.text()) : heard;
            remarks = remarks.noted(author, at, line, remark.text(), remark.pickup());
        }

        @Override
        public void edited(Remark.Edited remark) {
            renoted(remarks.edited(author, remark.note(), remark.text()));
        }

        @Override
        public void retracted(Remark.Retracted remark) {
            renoted(remarks.retracted(at, remark.act()));
        }

        @Override
        public void shown(Remark.Shown remark) {
            remarks = remarks.shown(at, remark.message());
        }

        private void renoted(Remarks changed) {
            heard = heard.renoted(remarks, changed);
            remarks = changed;
        }

        @Override
        public void told(Remark.Told remark) {
            remarks = remarks.told(author, at, remark.text());
        }

        @Override
        public void breakBegan(Remark.BreakBegan remark) {
            remarks = remarks.withBreak(Optional.of(remark.when()));
        }

        @Override
        public void breakOver(Remark.BreakOver remark) {
            remarks = remarks.withBreak(Optional.empty());
            if (!takes.rolling()) {
                fatigue = fatigue.rested(takes.restingSince(), remark.when(), now);
                takes = takes.restedTo(remark.when());
            }
        }

        @Override
        public void decided(Remark.Decided remark) {
            remarks = remarks.decided(author, at, remark, heard);
        }

        @Override
        public void bounded(Remark.Bounded remark) {
            remarks = remarks.bounded(author, remark);
        }

        @Override
        public void filmed(Remark.Filmed remark) {
            remarks = remarks.filmed(author, remark, counts.lines());
        }

        @Override
        public void undone(Remark.Undone remark) {
            remarks = remarks.undone();
        }

        @Override
        public void carried(Remark.Carried remark) {
            remarks = remarks.carried(remark.readRight());
        }
    }

    @Override
    public void notJudged(SessionEvent.NotJudged event) {
        unjudged = unjudged.with(event.stretch());
    }

    @Override
    public void understood(SessionEvent.Understood event) {
        troubles = troubles.understood(event);
    }

    @Override
    public void soundMeasured(SessionEvent.SoundMeasured event) {
        sound = sound.after(event);
    }

    @Override
    public void samplesLost(SessionEvent.SamplesLost event) {
        sound = sound.without(event.length());
    }

    @Override
    public void sourceLost(SessionEvent.SourceLost event) {
        troubles = troubles.with(new Trouble(Trouble.Kind.NO_SOUND, event.reason()));
    }

    @Override
    public void sourceFound(SessionEvent.SourceFound event) {
        troubles = troubles.sourceFound();
    }

    @Override
    public void sourceMoved(SessionEvent.SourceMoved event) {
        troubles = troubles.with(event.trouble());
    }

    @Override
    public void recordingFailed(SessionEvent.RecordingFailed event) {
        troubles = troubles.with(new Trouble(Trouble.Kind.NOT_RECORDED, event.reason()));
    }

    @Override
    public void recordingResumed(SessionEvent.RecordingResumed event) {
        troubles = troubles.without(Trouble.Kind.NOT_RECORDED);
    }

    @Override
    public void soundNotSaved(SessionEvent.SoundNotSaved event) {
        sound = sound.notSaved(event.stretch());
    }

    @Override
    public void held(SessionEvent.Held event) {
        takes = takes.held(now);
    }

    @Override
    public void resumed(SessionEvent.Resumed event) {
        takes = takes.resumed(now);
    }

    @Override
    public void countInStepped(SessionEvent.CountInStepped event) {
        takes = takes.countedIn(new CountIn(now, event.seconds()));
    }

    @Override
    public void roundMoved(SessionEvent.RoundMoved event) {
        round = event.round().line() <= counts.lines() ? event.round() : PickupRound.NONE;
    }

    /** The state, with the number of events that led to it. */
    SessionState toState(long revision) {
        return new SessionState(
                script,
                now,
                takes,
                following,
                new Lines(unjudged.over(remarks.rulings().over(heard, before)), asides),
                new Measures(pace.reading(counts, following.position(), script.settings()), fatigue.report(now), sound),
                troubles,
                remarks,
                round,
                before.upNext(),
                new Accumulators(counts, pace, fatigue, spent, heard, unjudged, revision));
    }
}
