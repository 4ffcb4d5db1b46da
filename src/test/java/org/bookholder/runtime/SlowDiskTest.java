package org.bookholder.runtime;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.runtime.source.PacedSource;
import org.bookholder.script.model.Script;
import org.bookholder.session.SessionEvent;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.ReadingRig;
import org.bookholder.testing.Scripts;
import org.bookholder.testing.Spoken;
import org.junit.jupiter.api.Test;

/** Nothing between the ear and the window waits for the disk. */
final class SlowDiskTest {
    private static final Script SCRIPT =
            Scripts.of("Every wheel begins with its hub.", "Count the spokes twice.", "Then lace the first side.");
    private static final Spoken VOICE = new Spoken(0.5)
            .says("every wheel begins with its hub")
            .says("count the spokes twice")
            .says("then lace the first side")
            .pauses(0.5);
    private static final Duration COMMIT = Duration.ofMillis(500);

    private record Shown(long millis, ReadingPosition position) {}

    @Test
    void aDiskThatTakesHalfASecondForACommitDoesNotDelayThePosition() {
        ReadingRig quick = new ReadingRig(SCRIPT, VOICE.hypotheses(), true);
        ReadingRig slow = new ReadingRig(SCRIPT, VOICE.hypotheses(), true);
        slow.takesLong("journal", COMMIT);
        List<Shown> whenQuick = read(quick);
        assertThat(whenQuick)
                .hasSizeGreaterThan(10)
                .last()
                .satisfies(last -> assertThat(last.position()).isEqualTo(new ReadingPosition(4, 1)));
        assertThat(read(slow)).isEqualTo(whenQuick);
        assertThat(slow.journal.batches())
                .as("one commit at a time")
                .isLessThanOrEqualTo(2 * (int) Math.ceil(VOICE.seconds() + 1));
    }

    @Test
    void nothingOlderThanASecondIsMissingOnASlowDisk() {
        ReadingRig rig = new ReadingRig(SCRIPT, VOICE.hypotheses(), true);
        rig.takesLong("journal", COMMIT);
        Reading reading = rig.begin(paced(rig));
        rig.pass(1.1);
        for (ReadingPosition aSecondAgo = reading.state().get().following().position();
                aSecondAgo.line() <= SCRIPT.lines().size();
                aSecondAgo = reading.state().get().following().position()) {
            rig.pass(1);
            ReadingPosition then = aSecondAgo;
            assertThat(rig.journal.events(SessionEvent.PositionMoved.class))
                    .anyMatch(moved -> moved.position().equals(then));
        }
    }

    private static List<Shown> read(ReadingRig rig) {
        Reading reading = rig.begin(paced(rig));
        List<Shown> shown = new ArrayList<>();
        for (long millis = 0; millis < VOICE.seconds() * 1000; millis += 20) {
            rig.pass(0.02);
            ReadingPosition now = reading.state().get().following().position();
            if (shown.isEmpty() || !shown.get(shown.size() - 1).position().equals(now)) {
                shown.add(new Shown(millis, now));
            }
        }
        return shown;
    }

    private static PacedSource paced(ReadingRig rig) {
        return new PacedSource(FakeAudioSource.of(ReadingRig.RATE, VOICE.sound(ReadingRig.RATE)), rig.clock);
    }
}
