package org.bookholder.runtime.take;

import static org.assertj.core.api.Assertions.assertThat;

import org.bookholder.runtime.record.RecordedTake;
import org.bookholder.runtime.record.SessionSound;
import org.bookholder.runtime.stage.Mailbox;
import org.bookholder.speech.AudioBlock;
import org.bookholder.testing.FakeClock;
import org.bookholder.testing.FakeTape;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

final class SyncStageTest {
    private static final int RATE = 16_000;

    private final FakeClock clock = new FakeClock();
    private final FakeTape tape = new FakeTape();
    private final Mailbox<Report> reports = new Mailbox<>(100);
    private final TakeChannels run = new TakeChannels(1, StreamTime.ofSeconds(10), 8, reports);
    private final RecordedTake recording =
            new SessionSound((take, rate, start) -> tape, clock).begin(1, RATE, StreamTime.ofSeconds(10));
    private final SyncStage stage = new SyncStage(run, recording, clock);

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
    void aTakeThatIsOverIsTriedOnUntilTheDiskHasItAndThatIsReported() {
        tape.room(0);
        recording.append(new AudioBlock(StreamTime.ofSeconds(10), RATE, new short[640]));
        recording.finish();
        run.tapeEnds();
        for (int i = 0; i < 3; i++) {
            clock.passMillis(1_000);
            assertThat(stage.doWork()).isEqualTo(1);
        }
        assertThat(reports.size()).as("told once that it is refused").isEqualTo(1);
        tape.room(100);
        clock.passMillis(1_000);
        assertThat(stage.doWork()).isEqualTo(1);
        assertThat(tape.blocks()).hasSize(1);
        assertThat(tape.closed()).isTrue();
        assertThat(reports.size()).as("told once that it is saved").isEqualTo(2);
        assertThat(stage.doWork()).isNegative();
    }

    @Test
    void endsWithTheRecording() {
        assertThat(stage.doWork()).isNotNegative();
        recording.finish();
        run.tapeEnds();
        assertThat(stage.doWork()).isNegative();
    }
}
