package org.bookholder.runtime;

import java.util.Optional;
import java.util.function.Supplier;
import org.bookholder.runtime.record.JournalQueue;
import org.bookholder.runtime.record.JournalStage;
import org.bookholder.runtime.record.SessionRecorder;
import org.bookholder.runtime.stage.CompletionLatch;
import org.bookholder.runtime.stage.Crew;
import org.bookholder.runtime.stage.Latest;
import org.bookholder.runtime.stage.Mailbox;
import org.bookholder.runtime.stage.Stage;
import org.bookholder.runtime.stage.StageGroup;
import org.bookholder.runtime.stage.Workers;
import org.bookholder.runtime.take.ReadingPlan;
import org.bookholder.runtime.take.Report;
import org.bookholder.runtime.take.SessionReports;
import org.bookholder.runtime.take.TakeStarter;
import org.bookholder.session.Command;
import org.bookholder.session.Request;
import org.bookholder.session.SessionState;
import org.jspecify.annotations.Nullable;

/**
 * A session that is being read. Safe for use by several threads.
 *
 * <p>Threads: the session's stage alone changes the session; the journal's stage writes its events to disk behind it. Each
 * take has a capture stage, which records and hands blocks
 * to the script ear's stage, and an open ear's stage, which reads the recording behind them; all report to the session's
 * stage. Views look at {@link #state()} and never wait.
 */
public final class Reading implements AutoCloseable {
    private static final int REPORTS = 4096;

    private final Mailbox<Report> reports = new Mailbox<>(REPORTS);
    private final JournalQueue journal = new JournalQueue();
    private final JournalStage journalStage;
    private final SessionRecorder recorder;
    private final Latest<Boolean> sessionEnded = new Latest<>(false);
    private final Latest<Boolean> ended = new Latest<>(false);
    private final Latest<ReadingProgress> progress = new Latest<>(ReadingProgress.NONE);
    private final CompletionLatch over = new CompletionLatch();
    private final PendingReplies replies = new PendingReplies();
    private @Nullable Workers workers;

    private final Latest<Optional<Fault>> fault = new Latest<>(Optional.empty());

    private Reading(ReadingPlan plan) {
        recorder = new SessionRecorder(journal, plan.before());
        journalStage = new JournalStage(journal, plan.journal(), plan.nanoTime(), sessionEnded);
    }

    /** Rolls the first take; the crew is to tell {@link #failed} of a stage's failure. */
    public static Reading begin(ReadingPlan plan, Crew crew) {
        Reading reading = new Reading(plan);
        reading.takeOn(plan, crew);
        return reading;
    }

    /** Rolls the first take on threads of its own. */
    public static Reading start(ReadingPlan plan) {
        Reading reading = new Reading(plan);
        Workers workers = new Workers(reading::failed);
        reading.workers = workers;
        reading.takeOn(plan, workers);
        return reading;
    }

    private void takeOn(ReadingPlan plan, Crew crew) {
        TakeStarter starter = new TakeStarter(plan, reports, crew);
        plan.manuscript()
                .ifPresent(file -> crew.takeOn(new ManuscriptStage(
                        file, plan.opened().scriptText(), reports, plan.nanoTime(), sessionEnded::get)));
        StageGroup session = new StageGroup(1, () -> sessionEnded.set(true));
        StageGroup both = new StageGroup(2, this::ended);
        crew.takeOn(both.member(session.member(new SessionStage(plan, reports, starter, recorder, progress))));
        crew.takeOn(both.member(journalStage));
    }

    /** Where the session stands. */
    public Supplier<SessionState> state() {
        return recorder.shown();
    }

    /** How the reading gets on. */
    public ReadingProgress progress() {
        return progress.get().with(journal.unsaved(), ended.get());
    }

    /** Asks for something; returns at once. */
    public void tell(Command command) {
        reports.add(command::to);
    }

    /** Asks for something; returns at once. {@code reply} is told when it is in the journal, or that it will not be. */
    public void ask(Request request, Request.Reply reply) {
        Request.Reply pending = replies.open(reply);
        reports.add(session -> session.ask(request, pending));
    }

    /** Lets the open ear leave unheard what it has not heard yet, so that the session can end now. */
    public void hurry() {
        reports.add(SessionReports::hurry);
    }

    /** The first failure of a stage, if there was one; the session then ends in order, as if asked to. */
    public Optional<Fault> fault() {
        return fault.get();
    }

    /** Takes note of a stage's failure and ends the session in order. */
    public void failed(Stage stage, Throwable failure) {
        synchronized (fault) {
            if (fault.get().isEmpty()) {
                fault.set(Optional.of(new Fault(stage.role(), failure)));
            }
        }
        reports.add(SessionReports::failed);
    }

    private void ended() {
        try {
            // Only after a fault is there anything left: what was entered after the journal's stage had ended.
            journalStage.writeRest();
        } finally {
            replies.end((fault.get().isEmpty() ? "The session has ended." : "A fault of the program ended the session.")
                    + " This was not done.");
            ended.set(true);
            over.come();
        }
    }

    /** Lets go of the threads; to be called when the reading is over, or to stop it where it stands. */
    @Override
    public void close() {
        if (workers != null) {
            workers.close();
        }
    }

    /** Waits for the end; says whether it came within {@code millis}, or the thread was interrupted. */
    public boolean await(long millis) {
        return over.await(millis);
    }

    /**
     * A stage's failure.
     *
     * @param role what the stage does
     * @param cause what went wrong
     */
    public record Fault(String role, Throwable cause) {}
}
