package org.bookholder.runtime.record;

import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.bookholder.journal.event.Journal;
import org.bookholder.runtime.stage.Criticality;
import org.bookholder.runtime.stage.Stage;

/**
 * Writes a session's events to its journal, as many at once as have come while the disk was busy. The only stage that waits
 * for the journal's file. When the disk refuses, it tries again every second, when
 * somebody waits for an answer, and at the end.
 */
public final class JournalStage implements Stage {
    private static final long RETRY_NANOS = 1_000_000_000L;

    private final JournalQueue queue;
    private final Journal journal;
    private final LongSupplier nanoTime;
    private final Supplier<Boolean> complete;
    private long failedAt;

    /**
     * Creates the stage.
     *
     * @param nanoTime a clock that only goes forward, in nanoseconds
     * @param complete whether no more events will be added
     */
    public JournalStage(JournalQueue queue, Journal journal, LongSupplier nanoTime, Supplier<Boolean> complete) {
        this.queue = queue;
        this.journal = journal;
        this.nanoTime = nanoTime;
        this.complete = complete;
    }

    @Override
    public String role() {
        return "journal";
    }

    @Override
    public Criticality criticality() {
        return Criticality.ESSENTIAL;
    }

    @Override
    public int doWork() {
        // Asked before writing: what was added before the session ended is then written in any case.
        boolean last = complete.get();
        boolean refused = !queue.failure().isEmpty();
        if (refused && !last && !queue.awaited() && nanoTime.getAsLong() - failedAt < RETRY_NANOS) {
            return 0;
        }
        int done = queue.write(journal);
        if (!queue.failure().isEmpty()) {
            failedAt = nanoTime.getAsLong();
        }
        return done == 0 && last ? -1 : done;
    }

    /** Also when the stage is stopped early, nothing that was added stays unwritten if it can be written. */
    @Override
    public void onClose() {
        writeRest();
    }

    /** Writes all that still waits, if the disk takes it; to be called by one thread at a time. */
    public void writeRest() {
        int done;
        do {
            done = queue.write(journal);
        } while (done > 0);
    }
}
