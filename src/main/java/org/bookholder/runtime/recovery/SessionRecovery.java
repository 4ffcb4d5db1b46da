package org.bookholder.runtime.recovery;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.FollowEvent;
import org.bookholder.journal.Replay;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.TakeAudio;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.record.JournalQueue;
import org.bookholder.runtime.record.JournalStage;
import org.bookholder.runtime.record.Overflow;
import org.bookholder.runtime.record.ReplayedSession;
import org.bookholder.runtime.record.SessionRecorder;
import org.bookholder.runtime.stage.FaultListener;
import org.bookholder.runtime.stage.OptionalWork;
import org.bookholder.runtime.take.FollowEntries;
import org.bookholder.runtime.take.SpoiledLines;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.script.model.SpokenHabits;
import org.bookholder.script.pronounce.ScriptPreparer;
import org.bookholder.session.Mover;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.session.TakeEnd;
import org.bookholder.session.Takes;
import org.bookholder.speech.Ears;
import org.bookholder.timing.StreamTime;

/**
 * Settles the takes of a stored session that were interrupted before they were settled: after a kill, what was read is
 * in the recording but not in the notes. Confined to one thread.
 */
public final class SessionRecovery {
    /** A recording this much shorter than the known length of its take has lost sound. */
    private static final StreamTime MISSING = StreamTime.ofSeconds(2);

    private final SessionFolder folder;
    private final Ears ears;
    private final SpokenHabits habits;
    private final JournalQueue queue = new JournalQueue();
    private final SessionRecorder recorder;
    private final List<UnsettledTake> takes;
    private final List<String> troubles = new ArrayList<>();
    private final OptionalWork marking = new OptionalWork(
            "spoiled lines",
            fault -> troubles.add("lines whose sound is spoiled could not be marked (" + fault.cause() + ")"));

    private SessionRecovery(
            SessionFolder folder, Ears ears, SpokenHabits habits, SessionState before, List<UnsettledTake> takes) {
        this.folder = folder;
        this.ears = ears;
        this.habits = habits;
        this.recorder = new SessionRecorder(queue, before);
        this.takes = takes;
    }

    /** The numbers of the unsettled takes, in order. */
    public static List<Integer> unsettled(List<SessionEvent> events) {
        return UnsettledTake.numbers(events);
    }

    /**
     * Follows each unsettled take from its recording and records the result in the journal. A take that cannot be
     * processed stays as it is.
     *
     * @param folder the session, opened for writing
     * @param ears the recogniser; not closed
     * @param progress receives the progress; if it throws, the current take stays as it was
     * @return which takes could not be processed and why, one sentence each
     * @throws ProblemException if the session cannot be read or written
     */
    public static List<String> settle(SessionFolder folder, Ears ears, FatigueLimits limits, RecoveryProgress progress)
            throws ProblemException {
        return settle(folder, ears, SpokenHabits.NONE, limits, progress);
    }

    /** The same for somebody who has a way of saying things. */
    public static List<String> settle(
            SessionFolder folder, Ears ears, SpokenHabits habits, FatigueLimits limits, RecoveryProgress progress)
            throws ProblemException {
        List<SessionEvent> events = folder.events();
        List<UnsettledTake> takes = UnsettledTake.of(events);
        if (takes.isEmpty()) {
            return List.of();
        }
        SessionEvent.Opened opened = Replay.firstOpened(events).orElseThrow();
        SessionState before =
                ReplayedSession.of(opened.script(), limits, events).state();
        SessionRecovery recovery = new SessionRecovery(folder, ears, habits, before, takes);
        recovery.settle(progress);
        return List.copyOf(recovery.troubles);
    }

    private void settle(RecoveryProgress progress) throws ProblemException {
        for (UnsettledTake take : takes) {
            try {
                settle(take, progress);
            } catch (ProblemException e) {
                troubles.add("take " + take.number() + " cannot be listened to again (" + e.getMessage() + ")");
            }
            save(take);
        }
    }

    private void save(UnsettledTake take) throws ProblemException {
        FaultListener lost =
                fault -> troubles.add("a note of take " + take.number() + " cannot be saved (" + fault.cause() + ")");
        new JournalStage(queue, folder.journal(), Overflow.NONE, () -> 0, () -> true, lost).writeRest();
        if (!queue.failure().isEmpty()) {
            throw new ProblemException(
                    "what became of take " + take.number() + " cannot be saved (" + queue.failure() + ")",
                    folder.path().toString(),
                    "see that the folder can be written and the disk has room, and open the session again");
        }
    }

    private void settle(UnsettledTake take, RecoveryProgress progress) throws ProblemException {
        Path file = folder.takeFile(take.number());
        Optional<TakeAudio> audio = folder.audio(take.number(), take.start());
        if (audio.isEmpty()) {
            boolean lost = !take.started().audio().isEmpty()
                    && MISSING.isBefore(take.seenTo().since(take.start()));
            if (lost) {
                throw new ProblemException("its sound is missing", file.toString(), "put the recording back");
            }
            enter(take, List.of(settled(take, take.start(), take.attemptsFrom(take.start()))), new SpoiledLines());
            return;
        }
        PreparedScript script = ScriptPreparer.prepare(take.script(), habits, ears.vocabulary());
        try (TakeAudio first = audio.get();
                TakeAudio second = folder.audio(take.number(), take.start()).orElseThrow()) {
            TakeListener listener = new TakeListener(take, script, first, second);
            List<FollowEvent> found = listener.listen(script, ears, progress);
            enter(take, withUnrecorded(take, found, first.end()), listener.spoiled());
        }
    }

    /** If the recording ends before the take does, later settled attempts are kept as they were. */
    private List<FollowEvent> withUnrecorded(UnsettledTake take, List<FollowEvent> found, StreamTime recordedTo) {
        StreamTime seen = take.seenTo();
        if (!MISSING.isBefore(seen.since(recordedTo))) {
            return found;
        }
        troubles.add(String.format(
                Locale.ROOT,
                "of take %d only the first %.0f s of %.0f s were recorded; what was read later is not known",
                take.number(),
                recordedTo.since(take.start()).seconds(),
                seen.since(take.start()).seconds()));
        List<FollowEvent> all = new ArrayList<>(found);
        if (all.remove(all.size() - 1) instanceof FollowEvent.TakeSettled heard) {
            List<Attempt> attempts = new ArrayList<>(heard.attempts());
            for (Attempt later : take.attemptsFrom(recordedTo)) {
                attempts.add(later.withOrdinal(attempts.size() + 1));
            }
            all.add(new FollowEvent.TakeSettled(heard.at(), heard.take(), attempts, heard.asides()));
        }
        return all;
    }

    private static FollowEvent settled(UnsettledTake take, StreamTime recordedTo, List<Attempt> attempts) {
        return new FollowEvent.TakeSettled(take.end(recordedTo), take.number(), attempts, List.of());
    }

    /**
     * Records what the journal does not have yet: the remaining moves of the position, the take's end, and its outcome.
     */
    private void enter(UnsettledTake take, List<FollowEvent> found, SpoiledLines spoiled) {
        FollowEntries entries = new FollowEntries(recorder, Mover.VOICE, take.changes(), spoiled, marking);
        Takes known = recorder.state().takes();
        boolean running = known.rolling() && take.number() == known.last().number();
        StreamTime followedTo = take.followedTo();
        FollowEvent outcome = found.get(found.size() - 1);
        for (FollowEvent event : found.subList(0, found.size() - 1)) {
            if (running && followedTo.isBefore(event.at())) {
                event.to(entries);
            }
        }
        if (running) {
            recorder.enter(ended(take, outcome.at()));
        }
        outcome.to(entries);
    }

    private static SessionEvent ended(UnsettledTake take, StreamTime end) {
        Duration length = end.since(take.start()).toDuration();
        return new SessionEvent.TakeEnded(
                end, take.number(), take.started().when().plus(length), TakeEnd.BROKEN_OFF);
    }
}
