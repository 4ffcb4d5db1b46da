package org.bookholder.runtime.take;

import java.util.function.LongSupplier;
import org.bookholder.runtime.record.RecordedTake;
import org.bookholder.runtime.stage.Criticality;
import org.bookholder.runtime.stage.Stage;

/**
 * Makes a take's recording safe once a second, away from the capture, which must not wait for a disk. What the disk has
 * refused when the take is over is tried again as often, until it is saved.
 */
final class SyncStage implements Stage {
    private static final long PERIOD_NANOS = 1_000_000_000L;

    private final TakeChannels run;
    private final RecordedTake recording;
    private final SavingReports saving;
    private final LongSupplier nanoTime;
    private long last;

    SyncStage(TakeChannels run, RecordedTake recording, LongSupplier nanoTime) {
        this.run = run;
        this.recording = recording;
        this.saving = new SavingReports(run, recording);
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
        if (recording.saved()) {
            return -1;
        }
        long now = nanoTime.getAsLong();
        if (now - last < PERIOD_NANOS) {
            return 0;
        }
        last = now;
        if (run.tapeEnded()) {
            recording.finish();
            saving.tell(
                    run.captured(),
                    event -> run.reports().add(session -> session.takes().happened(event)));
        } else {
            recording.sync();
        }
        return 1;
    }
}
