package org.bookholder.runtime.take;

import java.util.function.LongSupplier;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.record.Tape;
import org.bookholder.runtime.stage.Criticality;
import org.bookholder.runtime.stage.Stage;

/** Forces a take's recording to disk once a second. Separate from capture, which must not wait for a disk. */
final class SyncStage implements Stage {
    private static final long PERIOD_NANOS = 1_000_000_000L;

    private final TakeChannels run;
    private final Tape tape;
    private final LongSupplier nanoTime;
    private long last;

    SyncStage(TakeChannels run, Tape tape, LongSupplier nanoTime) {
        this.run = run;
        this.tape = tape;
        this.nanoTime = nanoTime;
        this.last = nanoTime.getAsLong();
    }

    @Override
    public String role() {
        return "recording";
    }

    @Override
    public Criticality criticality() {
        return Criticality.OPTIONAL;
    }

    @Override
    public int doWork() {
        if (run.tapeEnded()) {
            return -1;
        }
        long now = nanoTime.getAsLong();
        if (now - last < PERIOD_NANOS) {
            return 0;
        }
        last = now;
        try {
            tape.sync();
        } catch (ProblemException e) {
            run.recordingFailed(
                    run.captured(),
                    e.getMessage(),
                    event -> run.reports().add(session -> session.takes().happened(event)));
        }
        return 1;
    }
}
