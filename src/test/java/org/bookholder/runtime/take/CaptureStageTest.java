package org.bookholder.runtime.take;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.runtime.record.RecordedTake;
import org.bookholder.runtime.record.SessionSound;
import org.bookholder.runtime.source.Sources;
import org.bookholder.runtime.stage.Mailbox;
import org.bookholder.runtime.stage.OptionalWork;
import org.bookholder.runtime.stage.StageFault;
import org.bookholder.session.TakeEnd;
import org.bookholder.speech.AudioSource;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.FakeClock;
import org.bookholder.testing.FakeTape;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

final class CaptureStageTest {
    private static final int RATE = 16_000;
    private static final int CAPACITY = 8;

    private final FakeClock clock = new FakeClock();
    private final FakeTape tape = new FakeTape();
    private final List<StageFault> faults = new ArrayList<>();
    private final Mailbox<Report> reports = new Mailbox<>(100);
    private final TakeChannels run = new TakeChannels(1, StreamTime.ofSeconds(10), CAPACITY, reports);

    @Test
    void waitsWithAFileWhileTheScriptEarIsBusy() {
        CaptureStage stage = stage(false);
        for (int i = 0; i < 1000; i++) {
            stage.doWork();
        }
        assertThat(run.ear().size()).isEqualTo(CAPACITY);
        assertThat(tape.blocks()).hasSize(CAPACITY);
        run.ear().poll();
        stage.doWork();
        assertThat(tape.blocks()).hasSize(CAPACITY + 1);
    }

    @Test
    void neverWaitsWithLiveSoundAndRecordsWhatTheScriptEarMisses() {
        CaptureStage stage = stage(true);
        for (int i = 0; i < 20; i++) {
            stage.doWork();
        }
        assertThat(tape.blocks()).hasSize(20);
        assertThat(run.ear().size()).isEqualTo(CAPACITY);
        assertThat(reports.size()).isEqualTo(20 - CAPACITY);
    }

    @Test
    void countsTimeOnFromWhereTheTakeBegins() {
        CaptureStage stage = stage(false);
        stage.doWork();
        stage.doWork();
        assertThat(tape.blocks().get(0).start()).isEqualTo(StreamTime.ofSeconds(10));
        assertThat(run.captured()).isEqualTo(StreamTime.ofSeconds(10.08));
    }

    @Test
    void closesItsRecordingBeforeItReportsTheEnd() {
        CaptureStage stage = stage(false);
        run.cut(TakeEnd.CUT);
        assertThat(run.tapeEnded()).isFalse();
        assertThat(stage.doWork()).isNegative();
        assertThat(tape.closed()).isTrue();
        assertThat(run.tapeEnded()).isTrue();
    }

    private CaptureStage stage(boolean live) {
        SoundWatch watch = new SoundWatch(new OptionalWork("sound watch", faults::add));
        FakeAudioSource source = new FakeAudioSource(RATE).thenSilence(60);
        Sources sources = new Sources() {
            @Override
            public AudioSource open() {
                return source;
            }

            @Override
            public boolean live() {
                return live;
            }
        };
        RecordedTake recording =
                new SessionSound((take, rate, start) -> tape, clock).begin(1, RATE, StreamTime.ofSeconds(10));
        return new CaptureStage(run, sources, source, false, Optional.of(recording), clock, watch);
    }
}
