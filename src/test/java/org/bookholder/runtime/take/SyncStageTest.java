package org.bookholder.runtime.take;

import static org.assertj.core.api.Assertions.assertThat;

import org.bookholder.runtime.stage.Mailbox;
import org.bookholder.testing.FakeClock;
import org.bookholder.testing.FakeTape;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

final class SyncStageTest {
    private final FakeClock clock = new FakeClock();
    private final FakeTape tape = new FakeTape();
    private final Mailbox<Report> reports = new Mailbox<>(100);
    private final TakeChannels run = new TakeChannels(1, StreamTime.ofSeconds(10), 8, reports);
    private final SyncStage stage = new SyncStage(run, tape, clock);

    /** A power cut loses no more than a second of the recording. */
    @Test
    void forcesTheRecordingToDiskOnceASecond() {
        for (int tenth = 1; tenth <= 50; tenth++) {
            clock.passMillis(100);
            stage.doWork();
            stage.doWork();
            assertThat(tape.synced()).as("after %d tenths of a second", tenth).isEqualTo(tenth / 10);
        }
    }

    @Test
    void aFailingDiskIsReportedOnceAndEndsTheForcing() {
        tape.syncFails();
        clock.passMillis(1_000);
        stage.doWork();
        assertThat(reports.size()).isEqualTo(1);
        assertThat(run.tapeEnded()).isTrue();
        clock.passMillis(1_000);
        assertThat(stage.doWork()).isNegative();
        assertThat(reports.size()).isEqualTo(1);
    }

    @Test
    void endsWithTheRecording() {
        assertThat(stage.doWork()).isNotNegative();
        run.tapeEnds();
        clock.passMillis(5_000);
        assertThat(stage.doWork()).isNegative();
        assertThat(tape.synced()).isZero();
    }
}
