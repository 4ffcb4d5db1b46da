package org.bookholder.runtime.take;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.s;

import java.time.Instant;
import java.util.List;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Outcome;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.runtime.Reading;
import org.bookholder.script.model.Script;
import org.bookholder.session.LineNotes;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.sound.Spoil;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.ReadingRig;
import org.bookholder.testing.Scripts;
import org.bookholder.testing.Spoken;
import org.bookholder.testing.Wav;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

/** Lines whose sound is spoiled are marked as pickups with the reason, until they are read again. */
final class SpoiledLinesTest {
    private static final Script SCRIPT = Scripts.of("Every wheel begins with its hub.", "Count the spokes twice.");

    @Test
    void aClippedLineIsAPickupEvenIfReadClean() {
        Spoken voice = new Spoken(0.5)
                .says("every wheel begins with its hub")
                .says("count the spokes twice")
                .pauses(0.5);
        SessionState state = read(voice, FakeAudioSource.of(ReadingRig.RATE, clippedAt(1.0, voice.seconds())));

        LineNotes first = state.lines().notes(1);
        assertThat(first.outcome()).isEqualTo(Outcome.CLEAN);
        assertThat(first.marks()).containsExactly("sound clipped");
        assertThat(first.pickup()).isTrue();
        assertThat(state.lines().notes(2).pickup()).isFalse();
    }

    @Test
    void readingTheLineAgainSettlesTheMark() {
        Spoken voice = new Spoken(0.5)
                .says("every wheel begins with its hub")
                .says("every wheel begins with its hub")
                .says("count the spokes twice")
                .pauses(0.5);
        SessionState state = read(voice, FakeAudioSource.of(ReadingRig.RATE, clippedAt(1.0, voice.seconds())));

        assertThat(state.lines().notes(1).attempts()).hasSize(2);
        assertThat(state.lines().all()).noneMatch(LineNotes::pickup);
    }

    @Test
    void aLineOfWhichSoundWasLostIsAPickup() {
        Spoken voice = new Spoken(0.5)
                .says("every wheel begins with its hub")
                .says("count the spokes twice")
                .pauses(0.5);
        FakeAudioSource source =
                FakeAudioSource.of(ReadingRig.RATE, tone(1)).thenLoses(0.1).thenSilence(voice.seconds() - 1.1);
        SessionState state = read(voice, source);

        assertThat(state.lines().notes(1).marks()).containsExactly("sound dropped out");
        assertThat(state.lines().notes(2).pickup()).isFalse();
    }

    @Test
    void anAttemptThatIsSettledAnewIsMarkedOnce() {
        SpoiledLines spoiled = new SpoiledLines();
        spoiled.add(new Spoil(s(1), s(1.2), Spoil.Kind.CLIPPED));

        assertThat(marks(spoiled, complete(1, 1, 1, 6, 0.5, 3))).hasSize(1);
        assertThat(marks(spoiled, complete(1, 1, 1, 6, 0.5, 3.4))).isEmpty();
    }

    @Test
    void aSpoiledAttemptStraightAfterASpoiledOneIsMarkedToo() {
        SpoiledLines spoiled = new SpoiledLines();
        spoiled.add(new Spoil(s(1), s(4), Spoil.Kind.DROPOUT));

        assertThat(marks(spoiled, complete(1, 1, 1, 6, 0.5, 3))).hasSize(1);
        assertThat(marks(spoiled, complete(1, 2, 1, 6, 3, 5.5))).hasSize(1);
    }

    @Test
    void aMarkThatTheJournalHoldsIsNotMadeAgain() {
        SpoiledLines spoiled = new SpoiledLines();
        spoiled.add(new Spoil(s(1), s(1.2), Spoil.Kind.CLIPPED));
        spoiled.given(new SessionEvent.PickupMarked(s(2.8), 1, "sound clipped"));

        assertThat(marks(spoiled, complete(1, 1, 1, 6, 0.5, 3))).isEmpty();
    }

    private static List<SessionEvent> marks(SpoiledLines spoiled, Attempt settled) {
        SessionState state = Session.begin(SCRIPT, FatigueLimits.defaults());
        for (SessionEvent event : List.of(
                new SessionEvent.TakeStarted(s(0), 1, Instant.EPOCH, "microphone", ReadingPosition.START),
                new SessionEvent.AttemptSettled(settled.end(), settled))) {
            state = Session.apply(state, event);
        }
        return spoiled.marks(state, List.of(settled));
    }

    private static SessionState read(Spoken voice, FakeAudioSource source) {
        ReadingRig rig = new ReadingRig(SCRIPT, voice.hypotheses(), false);
        Reading reading = rig.begin(source);
        rig.pass(0.1);
        assertThat(rig.failures).isEmpty();
        assertThat(reading.progress().over()).isTrue();
        assertThat(reading.state().get().lines().all().stream().map(LineNotes::outcome))
                .isEqualTo(List.of(Outcome.CLEAN, Outcome.CLEAN));
        assertThat(reading.state().get().now()).isGreaterThan(StreamTime.ZERO);
        return reading.state().get();
    }

    private static short[] tone(double seconds) {
        return Wav.sine(200, 0.1, ReadingRig.RATE, seconds);
    }

    private static short[] clippedAt(double at, double seconds) {
        short[] samples = tone(seconds);
        int from = (int) (at * ReadingRig.RATE);
        for (int i = from; i < from + 40; i++) {
            samples[i] = Short.MAX_VALUE;
        }
        return samples;
    }
}
