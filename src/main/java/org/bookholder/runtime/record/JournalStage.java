package org.bookholder.runtime.record;

import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.bookholder.journal.event.Journal;
import org.bookholder.runtime.stage.Criticality;
import org.bookholder.runtime.stage.FaultListener;
import org.bookholder.runtime.stage.Stage;

/**
 * Writes a session's events to its journal, batching those that arrived while the disk was busy. The only stage that
 * waits for the journal's file. If the disk fails, it tries again every second, when a reply is waiting, and at the
 * end; from the second failure on, what waits is copied to a second place each time.
 */
public final class JournalStage implements Stage {
    private static final long RETRY_NANOS = 1_000_000_000L;

    private final JournalQueue queue;
    private final Journal journal;
    private final Overflow overflow;
    private final LongSupplier nanoTime;
    private final FaultListener faults;
    private final Supplier<Boolean> complete;
    private long failedAt;

    /**
     * Creates the stage.
     *
     * @param overflow the second place
     * @param nanoTime a monotonic clock in nanoseconds
     * @param complete whether no more events will be added
     * @param faults told of each event that can never be written
     */
    public JournalStage(
            JournalQueue queue,
            Journal journal,
            Overflow overflow,
            LongSupplier nanoTime,
            Supplier<Boolean> complete,
            FaultListener faults) {
        this.queue = queue;
        this.journal = journal;
        this.overflow = overflow;
        this.nanoTime = nanoTime;
        this.complete = complete;
        this.faults = faults;
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
        // Checked before writing, so that everything added before the session ended is written.
        boolean last = complete.get();
        boolean refused = !queue.failure().isEmpty();
        if (refused && !last && !queue.awaited() && nanoTime.getAsLong() - failedAt < RETRY_NANOS) {
            return 0;
        }
        int done = queue.write(journal, faults);
        if (queue.failure().isEmpty()) {
            queue.dropCopies(overflow);
        } else {
            if (refused) {
                queue.copyTo(overflow);
            }
            failedAt = nanoTime.getAsLong();
        }
        return done == 0 && last ? -1 : done;
    }

    /** Writes everything that was added, even if the stage is stopped early. */
    @Override
    public void onClose() {
        writeRest();
    }

    /** Writes everything that is waiting, if the disk works; call it from one thread at a time. */
    public void writeRest() {
        int done;
        do {
            done = queue.write(journal, faults);
        } while (done > 0);
    }
}
