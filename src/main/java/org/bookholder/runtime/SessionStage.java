package org.bookholder.runtime;

import java.util.function.Consumer;
import org.bookholder.runtime.record.SessionRecorder;
import org.bookholder.runtime.source.Revision;
import org.bookholder.runtime.stage.Criticality;
import org.bookholder.runtime.stage.Latest;
import org.bookholder.runtime.stage.Mailbox;
import org.bookholder.runtime.stage.OptionalWork;
import org.bookholder.runtime.stage.Stage;
import org.bookholder.runtime.stage.StageFault;
import org.bookholder.runtime.take.ReadingPlan;
import org.bookholder.runtime.take.Report;
import org.bookholder.runtime.take.SessionReports;
import org.bookholder.runtime.take.TakeReports;
import org.bookholder.runtime.take.TakeStarter;
import org.bookholder.session.Command;
import org.bookholder.session.Request;
import org.bookholder.session.SessionEvent;

/**
 * The only owner of a session: handles the reports of the stages and the requests of people one after another. It rolls
 * a take at the start, and ends when it was asked to quit and every take is settled.
 */
final class SessionStage implements Stage, SessionReports {
    /** Enough to be fast, few enough that views see the steps in between. */
    private static final int REPORTS_PER_STEP = 64;

    private final ReadingPlan plan;
    private final Mailbox<Report> reports;
    private final SessionRecorder recorder;
    private final Latest<ReadingProgress> progress;
    private final TakeLifecycle takes;
    private final TextRevision text;
    private final RoundDirector round;
    private final CountInDirector countIn;
    private final SessionCommands commands;

    /**
     * Creates the stage.
     *
     * @param nextLesson set to whether the next lesson is to follow when the session has ended
     * @param keepText asks for a text to be saved beside the session; returns at once
     * @param marking runs the marking of spoiled lines and survives its faults
     */
    SessionStage(
            ReadingPlan plan,
            Mailbox<Report> reports,
            TakeStarter starter,
            SessionRecorder recorder,
            Latest<ReadingProgress> progress,
            Latest<Boolean> nextLesson,
            Consumer<String> keepText,
            OptionalWork marking) {
        this.plan = plan;
        this.reports = reports;
        this.recorder = recorder;
        this.progress = progress;
        takes = new TakeLifecycle(plan, starter, recorder, marking);
        text = new TextRevision(recorder, takes, starter, plan.opened().scriptText(), keepText);
        round = new RoundDirector(recorder, takes, plan.nanoTime());
        countIn = new CountInDirector(
                recorder, takes, plan.nanoTime(), plan.conduct().countIn());
        commands = new SessionCommands(recorder, takes, text, round, countIn, nextLesson, plan.clock());
        takes.betweenTakes(text::useIfPossible);
    }

    @Override
    public String role() {
        return "session";
    }

    @Override
    public Criticality criticality() {
        return Criticality.ESSENTIAL;
    }

    @Override
    public void onStart() {
        recorder.enter(plan.opened());
        plan.earlier()
                .ifPresent(day ->
                        recorder.enter(new SessionEvent.DayCarried(plan.opened().at(), day)));
        boolean led = plan.conduct().pickups() ? round.goOn() || round.begin() : round.goOn();
        if (!led) {
            takes.roll(plan.from());
        }
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
        countIn.advance();
        round.advance();
        show();
        return done == 0 && takes.over() ? -1 : done;
    }

    /** After a fault or an early stop, ends the rolling take. */
    @Override
    public void onClose() {
        takes.abandon();
        show();
    }

    @Override
    public TakeReports takes() {
        return takes;
    }

    @Override
    public Command.Handler commands() {
        return commands;
    }

    @Override
    public void textSaved(Revision revision) {
        text.saved(revision);
    }

    @Override
    public void textUnusable(String problem) {
        text.unusable(problem);
    }

    @Override
    public void textNotKept(String problem) {
        text.notKept(problem);
    }

    @Override
    public void ask(Request request, Request.Reply reply) {
        commands.ask(request, reply);
    }

    @Override
    public void stageFailed(StageFault fault) {
        FaultTroubles.mended(fault.role()).ifPresent(recorder::mended);
        recorder.amiss(FaultTroubles.of(fault));
    }

    @Override
    public void stageRecovered(String role) {
        FaultTroubles.mended(role).ifPresent(recorder::mended);
    }

    @Override
    public void failed() {
        takes.failed();
    }

    private void show() {
        recorder.look();
        progress.set(takes.progress());
    }
}
