package org.bookholder.runtime.take;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicReference;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.record.RecordedTake;
import org.bookholder.runtime.record.SessionSound;
import org.bookholder.runtime.stage.Mailbox;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.Ear;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.Hypothesis;
import org.bookholder.testing.FakeClock;
import org.bookholder.testing.FakeTape;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

final class OpenEarStageTest {
    private static final int RATE = 16_000;

    private final FakeTape tape = new FakeTape();
    private final Mailbox<Report> reports = new Mailbox<>(1000);
    private final TakeChannels run = new TakeChannels(1, StreamTime.ZERO, 8, reports);

    /** The take that rolls: this one, until another begins. */
    private final AtomicReference<TakeChannels> rolling = new AtomicReference<>(run);

    private final List<AudioBlock> heard = new ArrayList<>();
    private final RecordedTake recording =
            new SessionSound((take, rate, start) -> tape, new FakeClock()).begin(1, RATE, StreamTime.ZERO);
    private final OpenEarStage stage = new OpenEarStage(
            run, recording, RATE, () -> Objects.requireNonNull(rolling.get()).behind(), RecordingEar::new);
    private long recorded;
    private boolean finished;

    @BeforeEach
    void start() {
        stage.onStart();
    }

    @Test
    void processesAFinishedTakeToItsEnd() throws ProblemException {
        record(100);
        run.tapeEnds();
        work(101);
        assertThat(heard).hasSize(100);
        assertThat(finished).isTrue();
    }

    @Test
    void idlesWhileNothingNewIsRecordedAndGoesOnAfterwards() throws ProblemException {
        record(1);
        assertThat(stage.doWork()).isEqualTo(1);
        assertThat(stage.doWork()).isZero();
        record(1);
        assertThat(stage.doWork()).isEqualTo(1);
        assertThat(finished).isFalse();
    }

    @Test
    void skipsTheRestWhenHurried() throws ProblemException {
        record(100);
        stage.doWork();
        run.hurry();
        assertThat(stage.doWork()).isNegative();
        assertThat(heard).hasSize(1);
        assertThat(finished).isTrue();
    }

    @Test
    void holdsBackWhileTheSessionIsBusy() throws ProblemException {
        record(10);
        while (!reports.full()) {
            reports.add(session -> {});
        }
        assertThat(stage.doWork()).isZero();
        assertThat(heard).isEmpty();
    }

    @Test
    void yieldsWhileThePositionIsBehind() throws ProblemException {
        record(10);
        run.captured(StreamTime.ofSeconds(1));
        run.followed(StreamTime.ofSeconds(0.7));
        assertThat(stage.doWork()).isZero();
        run.followed(StreamTime.ofSeconds(0.9));
        assertThat(stage.doWork()).isEqualTo(1);
    }

    @Test
    void yieldsToTheTakeThatRollsWhileItCatchesUpOnAnEarlierOne() throws ProblemException {
        record(10);
        run.captured(StreamTime.ofSeconds(1));
        run.tapeEnds();
        TakeChannels next = new TakeChannels(2, StreamTime.ofSeconds(1), 8, reports);
        rolling.set(next);
        next.captured(StreamTime.ofSeconds(1.3));
        assertThat(stage.doWork()).isZero();
        next.followed(StreamTime.ofSeconds(1.2));
        assertThat(stage.doWork()).isEqualTo(1);
    }

    @Test
    void closesTheRecordingAtTheEnd() {
        recording.finish();
        stage.onClose();
        assertThat(tape.readerClosed()).isTrue();
    }

    @Test
    void reportsItsEndWhenItIsGivenUp() {
        recording.finish();
        stage.onGivenUp();
        assertThat(tape.readerClosed()).isTrue();
        assertThat(reports.size()).isEqualTo(1);
    }

    private void record(int blocks) {
        for (int i = 0; i < blocks; i++) {
            StreamTime start = StreamTime.ofSamples(recorded++ * RATE / 25, RATE);
            recording.append(new AudioBlock(start, RATE, new short[RATE / 25]));
        }
    }

    private void work(int steps) throws ProblemException {
        for (int i = 0; i < steps; i++) {
            stage.doWork();
        }
    }

    private final class RecordingEar implements Ear {
        @Override
        public EarKind kind() {
            return EarKind.OPEN;
        }

        @Override
        public List<Hypothesis> hear(AudioBlock block) {
            heard.add(block);
            return List.of();
        }

        @Override
        public List<Hypothesis> finish() {
            finished = true;
            return List.of();
        }

        @Override
        public void close() {
            // holds nothing
        }
    }
}
