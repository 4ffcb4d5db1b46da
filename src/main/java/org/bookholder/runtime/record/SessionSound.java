package org.bookholder.runtime.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.bookholder.problem.ProblemException;
import org.bookholder.timing.StreamTime;

/** The recordings of a session's takes, with one memory for what the disk refuses of all of them. Safe for use by several threads. */
public final class SessionSound {
    private final Tapes tapes;
    private final LongSupplier nanoTime;
    private final UnsavedSound memory;
    private final List<RecordedTake> takes = new ArrayList<>();

    /**
     * Records on {@code tapes}.
     *
     * @param nanoTime a clock that only goes forward, in nanoseconds
     */
    public SessionSound(Tapes tapes, LongSupplier nanoTime) {
        this(tapes, nanoTime, UnsavedSound.CAPACITY);
    }

    SessionSound(Tapes tapes, LongSupplier nanoTime, long capacity) {
        this.tapes = tapes;
        this.nanoTime = nanoTime;
        this.memory = new UnsavedSound(capacity);
    }

    /**
     * Begins the recording of a take, come what may: what the disk does not take waits in memory.
     *
     * @param take take number, from 1
     * @param rate samples per second
     * @param start where the take's audio begins in the session's
     */
    public synchronized RecordedTake begin(int take, int rate, StreamTime start) {
        takes.removeIf(known -> known.saved() && known.elsewhere().ticks() == 0);
        RecordedTake begun = new RecordedTake(take, rate, start, tapes, memory, nanoTime);
        takes.add(begun);
        return begun;
    }

    /** Tries once more to write what waits; to be called when no take rolls. */
    public void saveRest() {
        unsaved().forEach(RecordedTake::finish);
    }

    /**
     * Saves in the second place what the session's folder has not taken; to be called when no stage uses it any more. What that does
     * not take either stays {@link #unsaved}.
     *
     * @return why, for people; empty if nothing is left
     */
    public String keepElsewhere() {
        String reason = "";
        for (RecordedTake take : unsaved()) {
            try {
                take.keepElsewhere();
            } catch (ProblemException e) {
                reason = e.getMessage();
            }
        }
        return reason;
    }

    /** How much sound is in the second place. */
    public synchronized StreamTime elsewhere() {
        return takes.stream().map(RecordedTake::elsewhere).reduce(StreamTime.ZERO, StreamTime::plus);
    }

    /** The takes that are not on disk to their end. */
    public synchronized List<RecordedTake> unsaved() {
        return takes.stream().filter(take -> !take.saved()).toList();
    }

    /** Why the first of them is not; empty if all are. */
    public String reason() {
        return unsaved().stream().map(RecordedTake::reason).findFirst().orElse("");
    }

    /** What is not on disk, and why, for people; empty if all is. */
    public String unsavedText() {
        List<RecordedTake> rest = unsaved();
        Optional<RecordedTake> first = rest.stream().findFirst();
        if (first.isEmpty()) {
            return "";
        }
        StreamTime waiting = rest.stream().map(RecordedTake::waiting).reduce(StreamTime.ZERO, StreamTime::plus);
        return waiting.ticks() == 0
                ? "the sound of take " + first.get().number() + " is not saved ("
                        + first.get().reason() + ")"
                : String.format(
                        Locale.ROOT,
                        "%.0f s of sound, of take %d on, are not saved (%s)",
                        waiting.seconds(),
                        first.get().number(),
                        first.get().reason());
    }

    /** Lets go of all files; what is not saved is gone then. To be called when no stage uses them any more. */
    public void close() {
        unsaved().forEach(RecordedTake::letGo);
    }
}
