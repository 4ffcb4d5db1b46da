package org.bookholder.runtime;

import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.bookholder.journal.event.Journal;
import org.bookholder.runtime.record.FaultLog;
import org.bookholder.runtime.record.JournalQueue;
import org.bookholder.runtime.record.JournalStage;
import org.bookholder.runtime.record.Overflow;
import org.bookholder.runtime.record.SessionRecorder;
import org.bookholder.runtime.stage.Crew;
import org.bookholder.runtime.stage.Criticality;
import org.bookholder.runtime.stage.FaultListener;
import org.bookholder.runtime.stage.Latest;
import org.bookholder.runtime.stage.Mailbox;
import org.bookholder.runtime.stage.Stage;
import org.bookholder.runtime.stage.StageFault;
import org.bookholder.runtime.stage.StageGroup;
import org.bookholder.session.NoteCommand;
import org.bookholder.session.Remark;
import org.bookholder.session.Request;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.jspecify.annotations.Nullable;

/**
 * The review of a stored session: accepts notes and decisions, but rolls no take. Only the stage changes the session;
 * everything else is safe for use by several threads.
 */
public final class Review implements Stage, FaultListener, NoteCommand.Handler {
    private final Mailbox<Runnable> asked = new Mailbox<>(1024);
    private final PendingReplies replies = new PendingReplies(this);
    private final JournalQueue journal = new JournalQueue();
    private final Latest<Boolean> ended = new Latest<>(false);
    private final Latest<Boolean> over = new Latest<>(false);
    private final Latest<Boolean> leftBehind = new Latest<>(false);
    private final JournalStage journalStage;
    private final Overflow overflow;
    private final SessionRecorder ledger;

    private final FaultLog log;

    /**
     * Creates the review of a session.
     *
     * @param kept its journal; whoever opened it closes it after the stages have ended
     * @param overflow a second place for what the journal does not take
     * @param nanoTime a monotonic clock in nanoseconds
     * @param log where faults of the program are logged
     */
    public Review(Journal kept, Overflow overflow, SessionState before, LongSupplier nanoTime, FaultLog log) {
        this.log = log;
        this.overflow = overflow;
        ledger = new SessionRecorder(journal, before);
        journalStage = new JournalStage(journal, kept, overflow, nanoTime, ended, this);
    }

    /** Gives the review's stages to a crew, which must report each fault of a stage to the review. */
    public void begin(Crew crew) {
        StageGroup both = new StageGroup(2, this::end);
        crew.takeOn(both.member(this));
        crew.takeOn(both.member(journalStage));
        crew.takeOn(log.stage(over::get));
    }

    /** The current state of the session. */
    public Supplier<SessionState> state() {
        return ledger.shown();
    }

    /** Makes a request; returns at once. {@code reply} is called when it is in the journal, or when it cannot be. */
    public void ask(Request request, Request.Reply reply) {
        Request.Reply pending = replies.open(reply);
        asked.add(() -> carryOut(request, pending));
    }

    private void carryOut(Request request, Request.Reply reply) {
        if (RequestHandling.noteOnly(request, reply, ledger.state(), this)) {
            ledger.tellWhetherSaved(reply);
        }
    }

    /** Logs a fault and informs people. */
    @Override
    public void failed(StageFault fault) {
        log.add(fault);
        if (fault.consequence() == StageFault.Consequence.LEFT_BEHIND) {
            leftBehind.set(true);
            return;
        }
        asked.add(() -> {
            FaultTroubles.mended(fault.role()).ifPresent(ledger::mended);
            ledger.amiss(FaultTroubles.of(fault));
        });
    }

    /** Whether a stage did not stop when its crew was closed: it may still write to the session's folder. */
    public boolean leftBehind() {
        return leftBehind.get();
    }

    /**
     * Saves in the second place what the journal does not take; to be called after the stages have ended.
     *
     * @return how many notes are there
     */
    public int keepElsewhere() {
        return journal.failure().isEmpty() ? 0 : journal.keepElsewhere(overflow);
    }

    @Override
    public void recovered(String role) {
        asked.add(() -> FaultTroubles.mended(role).ifPresent(ledger::mended));
    }

    @Override
    public String role() {
        return "review";
    }

    @Override
    public Criticality criticality() {
        return Criticality.ESSENTIAL;
    }

    @Override
    public int doWork() {
        int done = 0;
        for (@Nullable Runnable next = asked.poll(); next != null; next = asked.poll()) {
            next.run();
            done++;
        }
        ledger.look();
        return done;
    }

    /** Carries out everything that was requested before the end. */
    @Override
    public void onClose() {
        try {
            doWork();
        } finally {
            ended.set(true);
        }
    }

    private void end() {
        try {
            journalStage.writeRest();
        } finally {
            replies.end("This session's review has ended. This was not done.");
            over.set(true);
        }
    }

    @Override
    public void add(Remark remark) {
        ledger.enter(new SessionEvent.Remarked(ledger.state().now(), remark));
    }
}
