package org.bookholder.runtime;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.follow.model.FollowEvent;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.record.SessionRecorder;
import org.bookholder.runtime.source.Revision;
import org.bookholder.runtime.stage.Latest;
import org.bookholder.runtime.stage.Mailbox;
import org.bookholder.runtime.stage.Stage;
import org.bookholder.runtime.take.EvidenceOrder.Evidence;
import org.bookholder.runtime.take.EvidenceOrder.Kind;
import org.bookholder.runtime.take.FollowEntries;
import org.bookholder.runtime.take.ReadingPlan;
import org.bookholder.runtime.take.Report;
import org.bookholder.runtime.take.RunningTake;
import org.bookholder.runtime.take.SessionReports;
import org.bookholder.runtime.take.TakeStarter;
import org.bookholder.session.Mover;
import org.bookholder.session.Remark;
import org.bookholder.session.Renumbering;
import org.bookholder.session.Request;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.Trouble;
import org.bookholder.sound.Spoil;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.FrameLevels;
import org.bookholder.speech.Hypothesis;
import org.bookholder.timing.StreamTime;
import org.jspecify.annotations.Nullable;

/**
 * The only owner of a session: turns what the ears believe and what people ask for into events, and enters them. A take
 * is rolled at the start; the stage ends when it was asked to quit and every take is settled.
 */
public final class SessionStage implements Stage, SessionReports {
    /** Enough to be quick, few enough for a view to see what happens in between. */
    private static final int REPORTS_PER_STEP = 64;

    private final ReadingPlan plan;
    private final Mailbox<Report> reports;
    private final TakeStarter starter;
    private final SessionRecorder ledger;
    private final Latest<ReadingProgress> progress;
    private final Map<Integer, RunningTake> takes = new LinkedHashMap<>();
    private @Nullable RunningTake rolling;
    private Optional<ReadingPosition> next = Optional.empty();
    private StreamTime now;
    private StreamTime unheard = StreamTime.ZERO;
    private boolean quitting;
    private Optional<Revision> saved = Optional.empty();
    private String text;
    private boolean staysHeld;

    /** Whether the request being carried out waits for the end of the take. */
    private boolean endAsked;

    private final List<Request.Reply> afterEnd = new ArrayList<>();

    SessionStage(
            ReadingPlan plan,
            Mailbox<Report> reports,
            TakeStarter starter,
            SessionRecorder ledger,
            Latest<ReadingProgress> progress) {
        this.plan = plan;
        this.reports = reports;
        this.starter = starter;
        this.ledger = ledger;
        this.progress = progress;
        this.now = plan.before().now();
        this.text = plan.opened().scriptText();
    }

    @Override
    public String role() {
        return "session";
    }

    @Override
    public void onStart() {
        ledger.enter(plan.opened());
        roll(plan.from());
    }

    @Override
    public int doWork() {
        int done = 0;
        for (Report report = reports.poll(); report != null; report = reports.poll()) {
            report.to(this);
            if (++done == REPORTS_PER_STEP) {
                break;
            }
        }
        show();
        return done == 0 && quitting && takes.isEmpty() ? -1 : done;
    }

    @Override
    public void onClose() {
        show();
    }

    // --- from the stages of a take

    @Override
    public void heard(int take, Hypothesis hypothesis) {
        RunningTake keeper = takes.get(take);
        if (keeper != null) {
            Kind kind = Kind.of(hypothesis.ear());
            tell(keeper, keeper.order().add(new Evidence(hypothesis.heardTo(), kind, f -> f.hear(hypothesis))));
        }
    }

    @Override
    public void heard(int take, FrameLevels levels) {
        RunningTake keeper = takes.get(take);
        if (keeper != null) {
            tell(keeper, keeper.order().add(new Evidence(levels.end(), Kind.LEVELS, f -> f.hear(levels))));
        }
    }

    public void heardTo(int take, EarKind ear, StreamTime to) {
        RunningTake keeper = takes.get(take);
        if (ear == EarKind.SCRIPT) {
            now = StreamTime.max(now, to);
        } else if (keeper != null) {
            keeper.heardByOpenEar(to);
        }
        if (keeper != null) {
            tell(keeper, keeper.order().heardTo(ear, to));
        }
    }

    public void happened(SessionEvent event) {
        ledger.enter(event);
    }

    public void spoiled(int take, Spoil spoil) {
        RunningTake keeper = takes.get(take);
        if (keeper != null) {
            keeper.spoiled().add(spoil);
        }
    }

    public void unheard(StreamTime length) {
        unheard = unheard.plus(length);
    }

    public void captureEnded(int take, StreamTime at, String reason) {
        RunningTake keeper = takes.get(take);
        if (keeper == null) {
            return;
        }
        keeper.captureEnded(at, reason);
        end(keeper);
    }

    public void earDone(int take, EarKind ear) {
        RunningTake keeper = takes.get(take);
        if (keeper == null) {
            return;
        }
        keeper.earDone(ear);
        tell(keeper, keeper.order().done(ear));
        end(keeper);
    }

    /** Ends what is running as if it had been asked for, after a stage has failed. */
    @Override
    public void failed() {
        takes.values().forEach(keeper -> keeper.run().cut("the program failed"));
        quit();
    }

    // --- from the script's author

    /** Takes in a text that was saved; it is read from the next hold on, or at once if nobody reads. */
    @Override
    public void textSaved(Revision revision) {
        saved = revision.text().equals(text) ? Optional.empty() : Optional.of(revision);
        forgetText();
        saved.ifPresent(waiting -> ledger.amiss(new Trouble(Trouble.Kind.TEXT_WAITS, "")));
        changeText();
    }

    /** Says that a text was saved that is no script; the text before stays. */
    @Override
    public void textUnusable(String problem) {
        saved = Optional.empty();
        forgetText();
        ledger.amiss(new Trouble(Trouble.Kind.TEXT_UNUSABLE, problem));
    }

    private void forgetText() {
        ledger.mended(Trouble.Kind.TEXT_WAITS);
        ledger.mended(Trouble.Kind.TEXT_UNUSABLE);
        ledger.mended(Trouble.Kind.TEXT_NOT_KEPT);
    }

    /**
     * Reads the text that was saved, if somebody waits for it. A take is of one text: in a hold another one takes its
     * place, held as well. A recording that is heard would begin anew, so it is heard to its end.
     */
    private void changeText() {
        if (saved.isEmpty()) {
            return;
        }
        if (rolling == null) {
            use(saved.get());
        } else if (ledger.state().takes().held() && plan.sources().live() && next.isEmpty()) {
            next = Optional.of(ledger.state().following().position());
            staysHeld = true;
            rolling.run().cut("the text was changed");
        }
    }

    private void use(Revision revision) {
        Renumbering lines =
                Renumbering.between(ledger.state().script(), revision.script().script());
        ledger.enter(new SessionEvent.TextChanged(now, revision.text()));
        forgetText();
        takes.values().forEach(keeper -> keeper.textChanged(lines));
        next = next.map(lines::position);
        starter.use(revision.script());
        text = revision.text();
        saved = Optional.empty();
        try {
            plan.manuscript().orElseThrow().keep(text);
        } catch (ProblemException e) {
            ledger.amiss(new Trouble(Trouble.Kind.TEXT_NOT_KEPT, e.getMessage()));
        }
    }

    // --- from people

    @Override
    public void ask(Request request, Request.Reply reply) {
        endAsked = false;
        if (RequestHandling.carryOut(request, reply, ledger.state(), this)) {
            if (endAsked) {
                afterEnd.add(reply);
            } else {
                ledger.tellWhetherSaved(reply);
            }
        }
    }

    @Override
    public void hold() {
        if (rolling != null && !ledger.state().takes().held()) {
            enter(rolling, rolling.follower().hold(now), Mover.VOICE);
            ledger.enter(new SessionEvent.Held(now));
            changeText();
        }
    }

    @Override
    public void resume() {
        if (rolling != null && ledger.state().takes().held()) {
            enter(rolling, rolling.follower().resume(now), Mover.VOICE);
            ledger.enter(new SessionEvent.Resumed(now));
        }
    }

    @Override
    public void goTo(ReadingPosition position, Mover mover) {
        if (rolling != null) {
            enter(rolling, rolling.follower().move(now, position), mover);
        } else {
            ledger.enter(new SessionEvent.PositionMoved(now, position, mover, 0));
        }
    }

    @Override
    public void markPickup(int line, String note) {
        ledger.enter(new SessionEvent.PickupMarked(now, line, note));
    }

    @Override
    public void add(Remark remark) {
        ledger.enter(new SessionEvent.Remarked(now, remark));
    }

    @Override
    public void nextTake(ReadingPosition from) {
        if (rolling == null) {
            roll(from);
        } else {
            next = Optional.of(from);
            endAsked = true;
            rolling.run().cut("next take");
        }
    }

    @Override
    public void cut() {
        if (rolling != null) {
            endAsked = true;
            rolling.run().cut("cut");
        }
    }

    @Override
    public void quit() {
        quitting = true;
        next = Optional.empty();
        cut();
    }

    /** Lets the open ear leave unheard what it has not heard yet. */
    @Override
    public void hurry() {
        takes.values().forEach(keeper -> keeper.run().hurry());
    }

    // --- takes

    private void roll(ReadingPosition from) {
        if (quitting) {
            return;
        }
        int number = ledger.state().takes().count() + 1;
        RunningTake keeper = starter.start(number, now, from, ledger);
        takes.put(number, keeper);
        rolling = keeper;
        enter(keeper, keeper.follower().startTake(number, now, from), Mover.VOICE);
    }

    private void end(RunningTake keeper) {
        if (keeper == rolling && keeper.over()) {
            rolling = null;
            now = StreamTime.max(now, keeper.end());
            ledger.enter(new SessionEvent.TakeEnded(
                    keeper.end(), keeper.run().number(), starter.endOf(keeper), keeper.reason()));
            quitting |= plan.endsWithSource() && next.isEmpty();
            changeText();
            next.ifPresent(this::roll);
            next = Optional.empty();
            if (staysHeld) {
                staysHeld = false;
                hold();
            }
            afterEnd.forEach(ledger::tellWhetherSaved);
            afterEnd.clear();
        }
        if (keeper.settled()) {
            takes.remove(keeper.run().number());
            enter(keeper, keeper.follower().endTake(keeper.end()), Mover.VOICE);
        }
    }

    private void tell(RunningTake keeper, List<Evidence> evidence) {
        evidence.forEach(e -> enter(keeper, e.tell().apply(keeper.follower()), Mover.VOICE));
    }

    private void enter(RunningTake keeper, List<FollowEvent> events, Mover mover) {
        FollowEntries entries = new FollowEntries(ledger, mover, keeper.changes(), keeper.spoiled());
        events.forEach(event -> event.to(entries));
    }

    private void show() {
        ledger.look();
        StreamTime behind = takes.values().stream().map(RunningTake::behind).reduce(StreamTime.ZERO, StreamTime::plus);
        progress.set(ReadingProgress.of(rolling != null, behind, unheard));
    }
}
