package org.bookholder.runtime;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.follow.model.FollowEvent;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.runtime.record.SessionRecorder;
import org.bookholder.runtime.stage.OptionalWork;
import org.bookholder.runtime.take.EvidenceOrder.Evidence;
import org.bookholder.runtime.take.EvidenceOrder.Kind;
import org.bookholder.runtime.take.FollowEntries;
import org.bookholder.runtime.take.ReadingPlan;
import org.bookholder.runtime.take.RunningTake;
import org.bookholder.runtime.take.TakeReports;
import org.bookholder.runtime.take.TakeStarter;
import org.bookholder.session.Mover;
import org.bookholder.session.Renumbering;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.session.TakeEnd;
import org.bookholder.session.Trouble;
import org.bookholder.sound.Spoil;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.FrameLevels;
import org.bookholder.speech.Hypothesis;
import org.bookholder.timing.StreamTime;
import org.jspecify.annotations.Nullable;

/**
 * The takes of a session from their start until they are settled: rolls and cuts them, passes the reports of their
 * stages to the follower, and records its findings. At most one take rolls; the ears may still be processing earlier
 * ones. Confined to one thread.
 */
final class TakeLifecycle implements TakeReports, TakeControls {
    private static final String LOG = "the script ear failed";

    private final ReadingPlan plan;
    private final TakeStarter starter;
    private final SessionRecorder recorder;
    private final OptionalWork marking;
    private final Map<Integer, RunningTake> takes = new LinkedHashMap<>();
    private final List<Runnable> afterEnd = new ArrayList<>();
    private @Nullable RunningTake rolling;
    private Optional<ReadingPosition> next = Optional.empty();
    private boolean nextIsHeld;
    private boolean ending;
    private boolean quitting;
    private StreamTime now;
    private StreamTime unheard = StreamTime.ZERO;

    /**
     * The reading position when the script ear last finished an utterance. If the ear fails, everything it assumed
     * since is lost with it.
     */
    private ReadingPosition settledTo = ReadingPosition.START;

    private Optional<UnheardStretch> unheardStretch = Optional.empty();
    private Runnable betweenTakes = () -> {};

    /** Creates it without a take; {@code marking} runs the marking of spoiled lines and survives its faults. */
    TakeLifecycle(ReadingPlan plan, TakeStarter starter, SessionRecorder recorder, OptionalWork marking) {
        this.plan = plan;
        this.starter = starter;
        this.recorder = recorder;
        this.marking = marking;
        this.now = plan.before().now();
    }

    /** Sets work to run after each take, before the next one is rolled. */
    void betweenTakes(Runnable work) {
        betweenTakes = work;
    }

    // --- people's requests

    /**
     * Rolls a take; if one is rolling, cuts it first and rolls another one once it has ended. Returns whether an end is
     * pending.
     */
    @Override
    public boolean next(ReadingPosition from) {
        if (rolling == null) {
            roll(from);
            return false;
        }
        next = Optional.of(from);
        nextIsHeld = false;
        return cut(TakeEnd.NEXT_TAKE);
    }

    /** Cuts the rolling take, and rolls no other. Returns whether there was one, whose end is then pending. */
    @Override
    public boolean cut() {
        next = Optional.empty();
        nextIsHeld = false;
        return cut(TakeEnd.CUT);
    }

    private boolean cut(TakeEnd reason) {
        if (rolling == null) {
            return false;
        }
        ending = true;
        rolling.run().cut(reason);
        return true;
    }

    /** Cuts the rolling take, and rolls no other. */
    boolean quit() {
        quitting = true;
        return cut();
    }

    /** Ends everything after a fault of the program, as if asked to. */
    void failed() {
        takes.values().forEach(take -> take.run().cut(TakeEnd.PROGRAM_FAILED));
        quitting = true;
        next = Optional.empty();
    }

    /** Holds the rolling take, if it is not held. */
    @Override
    public void hold() {
        if (rolling != null && !held()) {
            enter(rolling, rolling.follower().hold(now), Mover.VOICE);
            recorder.enter(new SessionEvent.Held(now));
        }
    }

    /** Continues the rolling take, if it is held. */
    @Override
    public void resume() {
        if (rolling != null && held()) {
            enter(rolling, rolling.follower().resume(now), Mover.VOICE);
            recorder.enter(new SessionEvent.Resumed(now));
        }
    }

    /** Moves the reading position. */
    @Override
    public void goTo(ReadingPosition position, Mover mover) {
        if (rolling != null) {
            enter(rolling, rolling.follower().move(now, position), mover);
        } else {
            recorder.enter(new SessionEvent.PositionMoved(now, position, mover, 0));
        }
    }

    /** Sets work to run when the rolling take has ended. */
    void afterEnd(Runnable work) {
        afterEnd.add(work);
    }

    // --- current state

    /** The session's time: the sound captured so far. */
    StreamTime now() {
        return now;
    }

    /** Whether a take is rolling. */
    @Override
    public boolean rolling() {
        return rolling != null;
    }

    @Override
    public boolean ending() {
        return rolling != null && ending;
    }

    /** Whether the session was asked to end and every take is settled. */
    boolean over() {
        return quitting && takes.isEmpty();
    }

    /** The progress of the reading. */
    ReadingProgress progress() {
        StreamTime behind = takes.values().stream().map(RunningTake::behind).reduce(StreamTime.ZERO, StreamTime::plus);
        return ReadingProgress.of(rolling != null, behind, unheard);
    }

    private boolean held() {
        return recorder.state().takes().held();
    }

    // --- the script's text

    /** Whether the rolling take may be replaced by another one: it is held, live, and no other one is requested. */
    boolean replaceable() {
        return rolling != null && held() && plan.sources().live() && next.isEmpty();
    }

    /** Replaces the rolling take by another one, which is held as well. */
    void replace(TakeEnd reason) {
        next = Optional.of(recorder.state().following().position());
        nextIsHeld = true;
        cut(reason);
    }

    /** Call when the script was changed: findings about earlier takes are recorded under the new line numbers. */
    void textChanged(Renumbering lines) {
        takes.values().forEach(take -> take.textChanged(lines));
        next = next.map(lines::position);
    }

    // --- from the stages of a take

    @Override
    public void heard(int number, Hypothesis hypothesis) {
        RunningTake take = takes.get(number);
        if (take != null) {
            Kind kind = Kind.of(hypothesis.ear());
            tell(take, take.order().add(new Evidence(hypothesis.heardTo(), kind, f -> f.hear(hypothesis))));
            if (kind == Kind.SCRIPT_EAR && hypothesis instanceof Hypothesis.Final) {
                settledTo = recorder.state().following().position();
            }
        }
    }

    @Override
    public void heard(int number, FrameLevels levels) {
        RunningTake take = takes.get(number);
        if (take != null) {
            tell(take, take.order().add(new Evidence(levels.end(), Kind.LEVELS, f -> f.hear(levels))));
        }
    }

    @Override
    public void heardTo(int number, EarKind ear, StreamTime to) {
        RunningTake take = takes.get(number);
        if (ear == EarKind.SCRIPT) {
            now = StreamTime.max(now, to);
            Optional.ofNullable(take).ifPresent(t -> t.run().followed(to));
        } else if (take != null) {
            take.heardByOpenEar(to);
        }
        if (take != null) {
            tell(take, take.order().heardTo(ear, to));
        }
    }

    @Override
    public void notHeard(int number, StreamTime from, StreamTime to) {
        unheard = unheard.plus(to.since(from));
        if (takes.containsKey(number)) {
            endUnheardStretch();
            unheardStretch = Optional.of(new UnheardStretch(
                    number, from, to, settledTo, recorder.state().following().position()));
        }
    }

    /**
     * Ends a stretch that the script ear did not hear, once the voice is heard again or the take is over: the lines in
     * between are not judged.
     */
    private void endUnheardStretch() {
        SessionState state = recorder.state();
        unheardStretch.ifPresent(stretch -> recorder.enter(
                stretch.event(now, state.following().position(), state.lines().count(), LOG)));
        unheardStretch = Optional.empty();
    }

    private void lookForTheVoice(RunningTake take) {
        ReadingPosition position = recorder.state().following().position();
        if (unheardStretch
                .filter(s -> s.take() == take.run().number() && !s.position().equals(position))
                .isPresent()) {
            endUnheardStretch();
        }
    }

    @Override
    public void unheard(StreamTime length) {
        unheard = unheard.plus(length);
    }

    @Override
    public void late(int number, boolean late) {
        boolean deaf = recorder.isAmiss(Trouble.Kind.EAR_RESTARTS) || recorder.isAmiss(Trouble.Kind.EAR_LOST);
        if (late && !deaf && rolling != null && rolling.run().number() == number) {
            recorder.amiss(new Trouble(Trouble.Kind.BEHIND, ""));
        } else {
            recorder.mended(Trouble.Kind.BEHIND);
        }
    }

    @Override
    public void happened(SessionEvent event) {
        recorder.enter(event);
    }

    @Override
    public void spoiled(int number, Spoil spoil) {
        RunningTake take = takes.get(number);
        if (take != null) {
            take.spoiled().add(spoil);
        }
    }

    @Override
    public void captureEnded(int number, StreamTime at, TakeEnd reason) {
        RunningTake take = takes.get(number);
        if (take != null) {
            take.captureEnded(at, reason);
            end(take);
        }
    }

    @Override
    public void earDone(int number, EarKind ear) {
        RunningTake take = takes.get(number);
        if (take != null) {
            if (ear == EarKind.SCRIPT) {
                // Sound that it skipped because it was too late is never followed: the open ear must not wait for it.
                take.run().followed(take.run().captured());
            }
            take.earDone(ear);
            tell(take, take.order().done(ear));
            end(take);
        }
    }

    @Override
    public void hurry() {
        takes.values().forEach(take -> take.run().hurry());
    }

    // --- from start to end

    /** Rolls a take, unless the session was asked to end. */
    void roll(ReadingPosition from) {
        if (quitting) {
            return;
        }
        int number = recorder.state().takes().all().size() + 1;
        RunningTake take = starter.start(number, now, from, recorder);
        takes.put(number, take);
        rolling = take;
        ending = false;
        settledTo = from;
        enter(take, take.follower().startTake(number, now, from), Mover.VOICE);
    }

    private void end(RunningTake take) {
        if (take == rolling && take.over()) {
            rolling = null;
            recorder.mended(Trouble.Kind.BEHIND);
            now = StreamTime.max(now, take.end());
            recorder.enter(
                    new SessionEvent.TakeEnded(take.end(), take.run().number(), starter.endOf(take), take.reason()));
            quitting |= plan.endsWithSource() && next.isEmpty();
            betweenTakes.run();
            next.ifPresent(this::roll);
            next = Optional.empty();
            if (nextIsHeld) {
                nextIsHeld = false;
                hold();
            }
            afterEnd();
        }
        if (take.settled()) {
            endUnheardStretch();
            takes.remove(take.run().number());
            enter(take, take.follower().endTake(take.end()), Mover.VOICE);
        }
    }

    /** Ends the rolling take at its current sound, because nothing will be running when that sound ends. */
    void abandon() {
        if (rolling != null) {
            RunningTake take = rolling;
            take.run().cut(TakeEnd.PROGRAM_FAILED);
            take.captureEnded(take.run().captured(), TakeEnd.PROGRAM_FAILED);
            rolling = null;
            recorder.enter(
                    new SessionEvent.TakeEnded(take.end(), take.run().number(), starter.endOf(take), take.reason()));
            afterEnd();
        }
    }

    private void afterEnd() {
        afterEnd.forEach(Runnable::run);
        afterEnd.clear();
    }

    private void tell(RunningTake take, List<Evidence> evidence) {
        evidence.forEach(e -> enter(take, e.tell().apply(take.follower()), Mover.VOICE));
    }

    private void enter(RunningTake take, List<FollowEvent> events, Mover mover) {
        FollowEntries entries = new FollowEntries(recorder, mover, take.changes(), take.spoiled(), marking);
        events.forEach(event -> event.to(entries));
        lookForTheVoice(take);
    }
}
