package org.bookholder.runtime;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.bookholder.runtime.record.FaultLog;
import org.bookholder.runtime.record.JournalQueue;
import org.bookholder.runtime.record.JournalStage;
import org.bookholder.runtime.record.KeptElsewhere;
import org.bookholder.runtime.record.Overflow;
import org.bookholder.runtime.record.SessionRecorder;
import org.bookholder.runtime.record.SessionSound;
import org.bookholder.runtime.stage.CompletionLatch;
import org.bookholder.runtime.stage.Crew;
import org.bookholder.runtime.stage.FaultListener;
import org.bookholder.runtime.stage.Latest;
import org.bookholder.runtime.stage.Mailbox;
import org.bookholder.runtime.stage.StageFault;
import org.bookholder.runtime.stage.StageGroup;
import org.bookholder.runtime.stage.Workers;
import org.bookholder.runtime.take.ReadingPlan;
import org.bookholder.runtime.take.Report;
import org.bookholder.runtime.take.SessionReports;
import org.bookholder.runtime.take.TakeStarter;
import org.bookholder.session.Command;
import org.bookholder.session.Request;
import org.bookholder.session.SessionState;
import org.bookholder.timing.StreamTime;
import org.jspecify.annotations.Nullable;

/**
 * A running session. Safe for use by several threads.
 *
 * <p>Threads: only the session's stage changes the session; the journal's stage writes the events to disk afterwards.
 * Each take has a capture stage, which records and passes blocks to the script ear's stage, and an open ear's stage,
 * which follows behind by reading the recording; all report to the session's stage. Views look at {@link #state()} and
 * never wait.
 */
public final class Reading implements FaultListener, AutoCloseable {
    private static final int REPORTS = 4096;

    private final Mailbox<Report> reports = new Mailbox<>(REPORTS);
    private final JournalQueue journal = new JournalQueue();
    private final JournalStage journalStage;
    private final SessionSound sound;
    private final Overflow overflow;
    private final SessionRecorder recorder;
    private final Latest<Boolean> sessionEnded = new Latest<>(false);
    private final Latest<Boolean> ended = new Latest<>(false);
    private final Latest<ReadingProgress> progress = new Latest<>(ReadingProgress.NONE);
    private final Latest<Boolean> nextLesson = new Latest<>(false);
    private final CompletionLatch over = new CompletionLatch();
    private final PendingReplies replies = new PendingReplies(this);
    private @Nullable Workers workers;

    private final FaultLog log;
    private final Latest<Optional<StageFault>> essentialFault = new Latest<>(Optional.empty());
    private final Latest<Boolean> leftBehind = new Latest<>(false);
    private final Latest<Optional<StageFault>> firstFault = new Latest<>(Optional.empty());

    private Reading(ReadingPlan plan) {
        recorder = new SessionRecorder(journal, plan.before());
        log = plan.log();
        sound = new SessionSound(plan.tapes(), plan.nanoTime());
        overflow = plan.tapes().overflow();
        journalStage = new JournalStage(journal, plan.journal(), overflow, plan.nanoTime(), sessionEnded, this);
    }

    /** Rolls the first take; the crew must report each fault of a stage to the reading. */
    public static Reading begin(ReadingPlan plan, Crew crew) {
        Reading reading = new Reading(plan);
        reading.takeOn(plan, crew);
        return reading;
    }

    /** Rolls the first take on its own threads. */
    public static Reading start(ReadingPlan plan) {
        Reading reading = new Reading(plan);
        Workers workers = new Workers(plan.nanoTime(), reading);
        reading.workers = workers;
        reading.takeOn(plan, workers);
        return reading;
    }

    private void takeOn(ReadingPlan plan, Crew crew) {
        TakeStarter starter = new TakeStarter(plan, sound, reports, crew, this);
        Optional<ManuscriptStage> text = plan.manuscript()
                .map(file -> new ManuscriptStage(
                        file, plan.opened().scriptText(), reports, plan.nanoTime(), sessionEnded::get));
        text.ifPresent(crew::takeOn);
        Consumer<String> keepText = changed -> text.ifPresent(stage -> stage.keepSoon(changed));
        StageGroup session = new StageGroup(1, () -> sessionEnded.set(true));
        StageGroup both = new StageGroup(2, this::ended);
        crew.takeOn(both.member(session.member(new SessionStage(
                plan,
                reports,
                starter,
                recorder,
                progress,
                nextLesson,
                keepText,
                crew.optional("spoiled lines", this)))));
        crew.takeOn(both.member(journalStage));
        crew.takeOn(log.stage(ended::get));
    }

    /** The current state of the session. */
    public Supplier<SessionState> state() {
        return recorder.shown();
    }

    /** The progress of the reading. */
    public ReadingProgress progress() {
        return progress.get().with(unsaved(), ended.get());
    }

    /** Whether it was asked to end so that the next lesson of the running order can be read. */
    public boolean nextLesson() {
        return nextLesson.get();
    }

    /** What is not on disk, and why, for people; empty if all is. */
    public String unsaved() {
        return Stream.of(journal.unsaved(), ended.get() ? sound.unsavedText() : "")
                .filter(text -> !text.isEmpty())
                .collect(Collectors.joining("; "));
    }

    /** Gives a command; returns at once. */
    public void tell(Command command) {
        reports.add(session -> command.to(session.commands()));
    }

    /** Makes a request; returns at once. {@code reply} is called when it is in the journal, or when it cannot be. */
    public void ask(Request request, Request.Reply reply) {
        Request.Reply pending = replies.open(reply);
        reports.add(session -> session.ask(request, pending));
    }

    /** Makes the open ear skip everything it has not heard yet, so that the session can end now. */
    public void hurry() {
        reports.add(session -> session.takes().hurry());
    }

    /**
     * The first fault of an essential stage, if there was one; the session then ends in an orderly way, as if asked to.
     */
    public Optional<StageFault> fault() {
        return essentialFault.get();
    }

    /** The first fault of any stage, including those that the session can do without. */
    public Optional<StageFault> firstFault() {
        return firstFault.get();
    }

    /** Entries that could not be written to the log of faults; empty if all were. Call it after {@link #close()}. */
    public List<String> unwrittenLog() {
        return log.flush();
    }

    /** Logs a fault and informs people; if the stage is essential, ends the session in an orderly way. */
    @Override
    public void failed(StageFault failed) {
        log.add(failed);
        keepFirst(firstFault, failed);
        switch (failed.consequence()) {
            case SESSION_ENDS -> {
                keepFirst(essentialFault, failed);
                reports.add(SessionReports::failed);
            }
            case RESTARTS, GIVEN_UP -> reports.add(session -> session.stageFailed(failed));
            case LEFT_BEHIND -> {
                leftBehind.set(true);
                // The session is over, and the log has the fault.
            }
        }
    }

    @Override
    public void recovered(String role) {
        reports.add(session -> session.stageRecovered(role));
    }

    private static void keepFirst(Latest<Optional<StageFault>> kept, StageFault fault) {
        synchronized (kept) {
            if (kept.get().isEmpty()) {
                kept.set(Optional.of(fault));
            }
        }
    }

    private void ended() {
        try {
            // Anything is left only after a fault: events entered after the journal's stage had ended.
            journalStage.writeRest();
        } finally {
            replies.end((essentialFault.get().isEmpty()
                            ? "The session has ended."
                            : "A fault of the program ended the session.")
                    + " This was not done.");
            ended.set(true);
            over.come();
        }
    }

    /**
     * Whether a stage did not stop: it may still write to the session's folder. Call it after {@link #close()}.
     */
    public boolean leftBehind() {
        return leftBehind.get();
    }

    /** Ends the threads. Call it when the reading is over, or to stop it where it is. */
    @Override
    public void close() {
        if (workers != null) {
            workers.close();
            log.flush();
        }
    }

    /**
     * Tries once more to write what is not on disk, saves the rest in the second place, and lets go of the recordings. Call it once,
     * after {@link #close()}. What the second place does not take either stays {@link #unsaved}.
     *
     * @return what is in the second place; empty if all is in the session's folder, or a thread still hangs in writing there
     */
    public Optional<KeptElsewhere> keepElsewhere() {
        if (leftBehind()) {
            return Optional.empty();
        }
        sound.saveRest();
        journalStage.writeRest();
        String reason = Stream.of(sound.reason(), journal.failure())
                .filter(text -> !text.isEmpty())
                .findFirst()
                .map(text -> text.split("; ", 2)[0])
                .orElse("it had no room for a while");
        sound.keepElsewhere();
        int notes = journal.keepElsewhere(overflow);
        StreamTime kept = sound.elsewhere();
        if (sound.unsaved().isEmpty()) {
            sound.close();
        }
        return kept.ticks() == 0 && notes == 0
                ? Optional.empty()
                : Optional.of(new KeptElsewhere(kept, notes, overflow.place(), reason));
    }

    /** Waits for the end; returns true if it came within {@code millis} or the thread was interrupted. */
    public boolean await(long millis) {
        return over.await(millis);
    }
}
