package org.bookholder.runtime;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.runtime.source.PacedSource;
import org.bookholder.runtime.take.Conduct;
import org.bookholder.session.CountIn;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.TakeCommand;
import org.bookholder.session.Takes;
import org.bookholder.speech.AudioSource;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.ReadingRig;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

/** Counting takes in, in virtual time: whoever asks, the session counts. */
final class CountInDirectorTest {
    private final ReadingRig rig = new ReadingRig(Scripts.of("One line.", "Another line."), List.of(), true);

    @Test
    void theFirstTakeIsHeldUntilAskedForAndThenCountedIn() {
        Reading reading = begin(3);
        rig.pass(5);
        assertThat(count()).contains(0);
        assertThat(takes().held()).isTrue();
        reading.tell(new TakeCommand.BeginCount());
        rig.pass(2.9);
        assertThat(count()).contains(3);
        rig.pass(0.2);
        assertThat(takes().held()).isFalse();
        assertThat(count()).isEmpty();
        assertThat(rig.journal.events()).anyMatch(SessionEvent.CountInStepped.class::isInstance);
    }

    @Test
    void askingAgainSkipsTheRestOfTheCount() {
        Reading reading = begin(5);
        rig.pass(1);
        reading.tell(new TakeCommand.BeginCount());
        rig.pass(1);
        reading.tell(new TakeCommand.BeginCount());
        rig.pass(0.1);
        assertThat(takes().held()).isFalse();
    }

    @Test
    void laterTakesAreCountedInAtOnce() {
        rig.alsoHas(microphone());
        Reading reading = begin(2);
        rig.pass(0.5);
        reading.tell(new TakeCommand.BeginCount());
        rig.pass(3);
        reading.tell(new TakeCommand.NextTake(ReadingPosition.START));
        rig.pass(1);
        assertThat(takes().count()).isEqualTo(2);
        assertThat(count()).contains(2);
        rig.pass(2);
        assertThat(takes().held()).isFalse();
    }

    @Test
    void aTakeThatIsCutWhileItIsCountedInStaysCut() {
        Reading reading = begin(3);
        rig.pass(0.5);
        reading.tell(new TakeCommand.BeginCount());
        rig.pass(1);
        reading.tell(new TakeCommand.Cut());
        rig.pass(5);
        assertThat(takes().rolling()).isFalse();
        assertThat(count()).isEmpty();
    }

    @Test
    void withoutACountNothingIsHeld() {
        begin(0);
        rig.pass(2);
        assertThat(takes().held()).isFalse();
        assertThat(rig.journal.events()).noneMatch(SessionEvent.CountInStepped.class::isInstance);
    }

    private Reading begin(int seconds) {
        rig.conducts(new Conduct(seconds, false));
        return rig.begin(microphone());
    }

    private AudioSource microphone() {
        return new PacedSource(new FakeAudioSource(ReadingRig.RATE).thenSilence(30), rig.clock);
    }

    private Takes takes() {
        return rig.reading().state().get().takes();
    }

    private Optional<Integer> count() {
        return takes().countIn().map(CountIn::seconds);
    }
}
