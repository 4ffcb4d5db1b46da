package org.bookholder.session;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.bookholder.fatigue.FatigueClocks.Doing;
import org.bookholder.fatigue.FatigueLog;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.FollowState;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.pace.PaceLog;
import org.bookholder.pace.PaceOfLine;
import org.bookholder.pace.TakeTime;
import org.bookholder.pace.TakeTime.Span;
import org.bookholder.pace.WordCounts;
import org.bookholder.pace.WordTally;
import org.bookholder.script.model.Script;
import org.bookholder.session.SessionState.Sound;
import org.bookholder.session.SessionState.Take;
import org.bookholder.timing.StreamTime;
import org.pcollections.PVector;
import org.pcollections.TreePVector;

/** A state while events are worked into it; lives no longer than that. */
final class StateBuilder implements SessionEvent.Handler {
    private final Accumulators kept;
    private final List<LineNotes> seenBefore;
    private Script script;
    private WordCounts counts;
    private StreamTime now;
    private PVector<Take> takes;
    private boolean rolling;
    private ReadingPosition position;
    private Mover mover;
    private FollowState follow;
    private boolean held;
    private PVector<Aside> asides;
    private Sound sound;
    private PaceLog pace;
    private FatigueLog fatigue;
    private LineIndex book;
    private boolean begun;
    private PVector<Span> holds;
    private StreamTime heldSince;
    private Optional<Instant> cut;
    private String sourceTrouble;
    private String recordingTrouble;
    private Remarks remarks;

    StateBuilder(SessionState state) {
        kept = state.tallies();
        seenBefore = state.lines();
        script = state.script();
        counts = kept.counts();
        now = state.now();
        takes = TreePVector.from(state.takes());
        rolling = state.rolling();
        position = state.position();
        mover = state.mover();
        follow = state.follow();
        held = state.held();
        asides = TreePVector.from(state.asides());
        sound = state.sound();
        pace = kept.pace();
        fatigue = kept.fatigue();
        book = kept.book();
        begun = kept.begun();
        holds = kept.holds();
        heldSince = kept.heldSince();
        cut = kept.cut();
        sourceTrouble = kept.sourceTrouble();
        recordingTrouble = kept.recordingTrouble();
        remarks = kept.remarks();
    }

    /** Works an event in; what is shown of the pace depends on what was shown before. */
    void take(SessionEvent event) {
        passTo(event.at());
        event.to(this);
        pace = pace.shown(script.settings().targetPace());
    }

    /** Lets time pass as it was spent until now; an event that comes late does not turn it back. */
    private void passTo(StreamTime at) {
        if (!now.isBefore(at)) {
            return;
        }
        if (rolling) {
            boolean reading = !held && position.line() <= counts.lines();
            if (reading && follow == FollowState.FOLLOWING) {
                pace = pace.advance(at.since(now));
            }
            Doing doing = held ? Doing.RESTING : reading && begun ? Doing.READING : Doing.STANDING_BY;
            fatigue = fatigue.advance(at.toDuration().minus(now.toDuration()), doing);
            Take take = takes.get(takes.size() - 1);
            takes = takes.with(takes.size() - 1, new Take(take.number(), take.start(), at, take.when(), take.audio()));
        }
        now = at;
    }

    @Override
    public void opened(SessionEvent.Opened event) {
        cutIfRolling();
    }

    @Override
    public void textChanged(SessionEvent.TextChanged event) {
        Script changed = event.script(script.source());
        Renumbering lines = Renumbering.between(script, changed);
        counts = WordCounts.of(changed);
        book = book.renumbered(lines, counts.lines());
        remarks = remarks.renumbered(lines);
        position = lines.position(position);
        script = changed;
    }

    @Override
    public void takeStarted(SessionEvent.TakeStarted event) {
        cutIfRolling();
        restTo(event.when());
        remarks = remarks.withBreak(Optional.empty());
        takes = takes.plus(new Take(event.take(), now, now, event.when(), event.audio()));
        rolling = true;
        begun = false;
        position = event.from();
        mover = Mover.VOICE;
        follow = FollowState.FOLLOWING;
        pace = pace.takeChanged(event.take());
        recordingTrouble = "";
        if (!event.audio().isEmpty()) {
            sourceTrouble = "";
        }
    }

    /** Time of day went by since the last take was cut, or the last break ended. */
    private void restTo(Instant when) {
        cut.map(c -> Duration.between(c, when))
                .filter(rest -> !rest.isNegative())
                .ifPresent(rest -> fatigue = fatigue.advance(rest, Doing.RESTING));
    }

    @Override
    public void takeEnded(SessionEvent.TakeEnded event) {
        endTake(event.when());
    }

    /** The program ended without cutting the take: it ran as long as there is audio. */
    private void cutIfRolling() {
        if (rolling) {
            Take take = takes.get(takes.size() - 1);
            endTake(take.when().plus(take.end().since(take.start()).toDuration()));
        }
    }

    private void endTake(Instant when) {
        endHold();
        rolling = false;
        cut = Optional.of(when);
        follow = FollowState.FOLLOWING;
        pace = pace.takeChanged(pace.take());
    }

    @Override
    public void positionMoved(SessionEvent.PositionMoved event) {
        boolean jump = event.wordsRead() == 0;
        begun |= rolling && !(jump && event.mover() == Mover.VOICE);
        int from = position.line();
        position = event.position();
        mover = event.mover();
        if (rolling && !held && mover != Mover.HAND) {
            pace = pace.read(event.wordsRead());
        }
        // Lines that the voice reads one after another await their attempts; those that it left out do not. A hand may
        // move past lines for any reason.
        if (jump) {
            book = mover == Mover.VOICE ? book.jumped(from, position.line()) : book.noneLeftOut();
        }
    }

    @Override
    public void followChanged(SessionEvent.FollowChanged event) {
        follow = event.state();
    }

    @Override
    public void attemptSettled(SessionEvent.AttemptSettled event) {
        Attempt attempt = event.attempt();
        takeBack(book.attempt(attempt.take(), attempt.ordinal()));
        add(attempt);
    }

    @Override
    public void takeSettled(SessionEvent.TakeSettled event) {
        takeBack(book.attempts(event.take()));
        event.attempts().forEach(this::add);
        book = book.noneLeftOut();
        List<Aside> all = new ArrayList<>(event.asides());
        asides.stream().filter(a -> a.take() != event.take()).forEach(all::add);
        all.sort(Comparator.comparing(Aside::start));
        asides = TreePVector.from(all);
        long words = event.attempts().stream()
                .mapToLong(a -> measure(a).spoken().words())
                .sum();
        StreamTime time = TakeTime.of(event.attempts(), event.asides(), holds);
        pace = pace.settle(event.take(), WordTally.of(words, time));
    }

    private void add(Attempt attempt) {
        book = book.with(attempt);
        PaceOfLine measured = measure(attempt);
        pace = pace.plus(measured);
        fatigue = fatigue.plus(attempt, measured);
    }

    private void takeBack(List<Attempt> attempts) {
        book = book.without(attempts);
        for (Attempt attempt : attempts) {
            PaceOfLine measured = measure(attempt);
            pace = pace.minus(measured);
            fatigue = fatigue.minus(attempt, measured);
        }
    }

    private PaceOfLine measure(Attempt attempt) {
        return PaceOfLine.of(counts.line(attempt.line()), attempt, pace.rules().pause());
    }

    @Override
    public void pickupMarked(SessionEvent.PickupMarked event) {
        mark(event.at(), event.line(), event.note(), Person.PRESENTER, true);
    }

    @Override
    public void remarked(SessionEvent.Remarked event) {
        event.remark().to(new Remarking(event.at()));
    }

    private void mark(StreamTime at, int line, String text, Person by, boolean pickup) {
        int real = Math.min(line, counts.lines());
        book = pickup ? book.marked(at, real, text) : book;
        remarks = remarks.noted(new Note(at, real, text, by, pickup));
    }

    /** What a person's remark changes. */
    private final class Remarking implements Remark.Handler {
        private final StreamTime at;

        Remarking(StreamTime at) {
            this.at = at;
        }

        @Override
        public void noted(Remark.Noted remark) {
            mark(at, remark.line(), remark.text(), Person.PRODUCER, remark.pickup());
        }

        @Override
        public void told(Remark.Told remark) {
            remarks = remarks.told(at, remark.text());
        }

        @Override
        public void breakBegan(Remark.BreakBegan remark) {
            remarks = remarks.withBreak(Optional.of(remark.when()));
        }

        @Override
        public void breakOver(Remark.BreakOver remark) {
            remarks = remarks.withBreak(Optional.empty());
            if (!rolling) {
                restTo(remark.when());
                cut = cut.isPresent() ? Optional.of(remark.when()) : cut;
            }
        }

        @Override
        public void decided(Remark.Decided remark) {
            int line = remark.line();
            if (line >= 1 && line <= book.lines().size()) {
                Decision decision = new Decision(remark.choice(), remark.take(), remark.ordinal(), at);
                remarks = remarks.decided(
                        line, decision, book.lines().get(line - 1).attempts());
            }
        }

        @Override
        public void bounded(Remark.Bounded remark) {
            remarks = remarks.bounded(remark);
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

    /** What is known of the lines, with what people ruled laid over it. */
    private PVector<LineNotes> lines() {
        ReviewOverrides rulings = remarks.rulings();
        if (rulings.isEmpty()) {
            return book.lines();
        }
        boolean same = rulings.equals(kept.remarks().rulings());
        return rulings.over(book.lines(), kept.book().lines(), same ? seenBefore : List.of());
    }

    @Override
    public void soundMeasured(SessionEvent.SoundMeasured event) {
        sound = new Sound(event.rms(), event.peak(), sound.clipped() + event.clipped(), sound.lost());
    }

    @Override
    public void samplesLost(SessionEvent.SamplesLost event) {
        sound = new Sound(
                sound.rms(), sound.peak(), sound.clipped(), sound.lost().plus(event.length()));
    }

    @Override
    public void sourceLost(SessionEvent.SourceLost event) {
        sourceTrouble = "No sound comes in (" + event.reason() + "); the take goes on by hand.";
    }

    @Override
    public void sourceFound(SessionEvent.SourceFound event) {
        sourceTrouble = "";
    }

    @Override
    public void recordingFailed(SessionEvent.RecordingFailed event) {
        recordingTrouble = "This take is no longer recorded (" + event.reason() + ").";
    }

    @Override
    public void held(SessionEvent.Held event) {
        if (rolling && !held) {
            held = true;
            heldSince = now;
        }
    }

    @Override
    public void resumed(SessionEvent.Resumed event) {
        endHold();
    }

    private void endHold() {
        if (held) {
            held = false;
            holds = holds.plus(new Span(heldSince, now));
        }
    }

    /** The state after so many events. */
    SessionState toState(int events) {
        int target = script.settings().targetPace();
        Accumulators tallies = new Accumulators(
                counts,
                pace,
                fatigue,
                book,
                begun,
                holds,
                heldSince,
                cut,
                sourceTrouble,
                recordingTrouble,
                remarks,
                kept.revision() + events);
        return new SessionState(
                script,
                now,
                takes,
                rolling,
                position,
                mover,
                follow,
                held,
                lines(),
                asides,
                pace.reading(counts.before(position), counts.total(), target),
                fatigue.report(now),
                sound,
                trouble(),
                tallies);
    }

    private String trouble() {
        return (sourceTrouble + " " + recordingTrouble).strip();
    }
}
