package org.bookholder.runtime;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.bookholder.follow.model.Outcome;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.runtime.source.PacedSource;
import org.bookholder.script.model.Script;
import org.bookholder.session.LineNotes;
import org.bookholder.session.Mover;
import org.bookholder.session.NoteCommand;
import org.bookholder.session.Remark;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.session.TakeCommand;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.AudioRead;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.FakeEars;
import org.bookholder.testing.FakeTape;
import org.bookholder.testing.ReadingRig;
import org.bookholder.testing.Scripts;
import org.bookholder.testing.Spoken;
import org.bookholder.timing.StreamTime;
import org.bookholder.wording.TroubleText;
import org.junit.jupiter.api.Test;

final class ReadingTest {
    private static final Script SCRIPT =
            Scripts.of("Every wheel begins with its hub.", "Count the spokes twice.", "Then lace the first side.");
    private static final Spoken VOICE = new Spoken(0.5)
            .says("every wheel begins with its hub")
            .says("then lace the first side")
            .pauses(0.5);

    @Test
    void readsAFileToItsEndAndSettlesTheTake() {
        FakeEars ears = new FakeEars(VOICE.hypotheses());
        ReadingRig rig = new ReadingRig(SCRIPT, ears, false);
        Reading reading = rig.begin(sound(VOICE.seconds()));
        rig.pass(0.1);
        assertThat(reading.progress().over()).isTrue();
        SessionState state = reading.state().get();
        assertThat(state.takes().rolling()).isFalse();
        assertThat(state.lines().all().stream().map(LineNotes::outcome))
                .containsExactly(Outcome.CLEAN, Outcome.SKIPPED, Outcome.CLEAN);
        assertThat(rig.failures).isEmpty();
        assertThat(ears.open()).isZero();
    }

    @Test
    void recordsTheEventsOfASessionInOrder() {
        ReadingRig rig = file();
        rig.begin(sound(VOICE.seconds()));
        rig.pass(0.1);
        List<SessionEvent> events = rig.journal.events();
        assertThat(events.get(0)).isInstanceOf(SessionEvent.Opened.class);
        assertThat(events.get(1)).isInstanceOf(SessionEvent.TakeStarted.class);
        assertThat(events.get(events.size() - 1)).isInstanceOf(SessionEvent.TakeSettled.class);
        assertThat(rig.journal.events(SessionEvent.TakeEnded.class)).hasSize(1);
    }

    @Test
    void datesTheEndOfAFileByItsLengthAndNotByTheTimeThatItTook() {
        ReadingRig rig = file();
        rig.begin(sound(5));
        rig.pass(0.1);
        Instant start =
                rig.journal.events(SessionEvent.TakeStarted.class).get(0).when();
        SessionEvent.TakeEnded ended =
                rig.journal.events(SessionEvent.TakeEnded.class).get(0);
        assertThat(ended.when()).isEqualTo(start.plus(Duration.ofSeconds(5)));
        assertThat(ended.at()).isEqualTo(StreamTime.ofSeconds(5));
    }

    @Test
    void endsATakeWhenAskedAndBeginsTheNextWhereItsAudioEnds() {
        ReadingRig rig = live();
        rig.alsoHas(silent());
        Reading reading = rig.begin(silent());
        rig.pass(3);
        reading.tell(new TakeCommand.NextTake(new ReadingPosition(2, 1)));
        rig.pass(3);
        List<SessionEvent.TakeStarted> takes = rig.journal.events(SessionEvent.TakeStarted.class);
        assertThat(takes).hasSize(2);
        assertThat(takes.get(1).at())
                .isEqualTo(
                        rig.journal.events(SessionEvent.TakeEnded.class).get(0).at());
        assertThat(takes.get(1).from()).isEqualTo(new ReadingPosition(2, 1));
        assertThat(reading.state().get().following().position()).isEqualTo(new ReadingPosition(2, 1));
    }

    @Test
    void rollsNoOtherTakeIfItIsCutRightAfterOneWasAskedFor() {
        ReadingRig rig = live();
        rig.alsoHas(silent());
        Reading reading = rig.begin(silent());
        rig.pass(1);
        reading.tell(new TakeCommand.NextTake(new ReadingPosition(2, 1)));
        reading.tell(new TakeCommand.Cut());
        rig.pass(2);
        assertThat(rig.journal.events(SessionEvent.TakeStarted.class)).hasSize(1);
        assertThat(reading.state().get().takes().rolling()).isFalse();
    }

    @Test
    void continuesByHandWithoutTheMicrophoneAndUsesItAgainWhenItReturns() {
        ReadingRig rig = new ReadingRig(SCRIPT, List.of(), true);
        FakeAudioSource first = sound(2).then(new AudioRead.Gone("the microphone was unplugged"));
        Reading reading = rig.begin(first);
        rig.pass(0.5);
        assertThat(TroubleText.of(reading.state().get().troubles())).contains("unplugged");
        reading.tell(new TakeCommand.GoTo(new ReadingPosition(3, 1), Mover.HAND));
        rig.pass(0.5);
        assertThat(reading.state().get().following().position()).isEqualTo(new ReadingPosition(3, 1));
        assertThat(reading.state().get().following().mover()).isEqualTo(Mover.HAND);
        rig.alsoHas(silent());
        rig.pass(2);
        assertThat(reading.state().get().troubles().all()).isEmpty();
        SessionEvent.SourceLost lost =
                rig.journal.events(SessionEvent.SourceLost.class).get(0);
        SessionEvent.SourceFound found =
                rig.journal.events(SessionEvent.SourceFound.class).get(0);
        // A device is looked for every two seconds, and what passes meanwhile counts as silence.
        assertThat(found.at().since(lost.at()).seconds()).isBetween(1.9, 2.1);
        assertThat(first.closed()).isTrue();
    }

    @Test
    void saysThatAnotherMicrophoneIsHeardAndTakesTheFirstOneAgain() {
        ReadingRig rig = new ReadingRig(SCRIPT, List.of(), true);
        FakeAudioSource first = sound(60).named("Desk microphone");
        Reading reading = rig.begin(new PacedSource(first, rig.clock));
        rig.pass(0.5);
        first.named("Laptop");
        rig.pass(0.5);
        assertThat(TroubleText.of(reading.state().get().troubles()))
                .isEqualTo("Another microphone is heard now: Laptop instead of Desk microphone.");
        rig.pass(3);
        assertThat(first.closed()).isFalse();
        rig.alsoHas(new PacedSource(sound(60).named("Desk microphone"), rig.clock));
        rig.pass(2.1);
        assertThat(first.closed()).isTrue();
        assertThat(reading.state().get().troubles().all()).isEmpty();
        assertThat(reading.state().get().takes().rolling()).isTrue();
        assertThat(reading.state().get().takes().all()).hasSize(1);
    }

    /** Where the microphone was pulled out and another one is there, that one is used until the first is back. */
    @Test
    void goesOnWithAnotherMicrophoneUntilTheFirstIsBack() {
        ReadingRig rig = new ReadingRig(SCRIPT, List.of(), true);
        Reading reading =
                rig.begin(sound(1).named("Desk microphone").then(new AudioRead.Gone("the microphone was unplugged")));
        rig.alsoHas(new PacedSource(sound(60).named("Laptop"), rig.clock));
        rig.pass(3.2);
        assertThat(TroubleText.of(reading.state().get().troubles()))
                .isEqualTo("Another microphone is heard now: Laptop instead of Desk microphone.");
        rig.alsoHas(new PacedSource(sound(60).named("Desk microphone"), rig.clock));
        rig.pass(2.1);
        assertThat(reading.state().get().troubles().all()).isEmpty();
        assertThat(rig.journal.events(SessionEvent.SourceFound.class))
                .extracting(SessionEvent.SourceFound::name)
                .containsExactly("Laptop", "Desk microphone");
    }

    @Test
    void continuesWithoutARecordingIfTheDiskIsFull() {
        ReadingRig rig = file();
        FakeTape tape = new FakeTape();
        tape.room(25);
        rig.tapes.put(1, tape);
        Reading reading = rig.begin(sound(VOICE.seconds()));
        rig.pass(0.1);
        assertThat(rig.journal.events(SessionEvent.RecordingFailed.class)).hasSize(1);
        assertThat(reading.progress().over()).isTrue();
        assertThat(reading.progress().unsaved()).contains("of sound, of take 1 on, are not saved");
        assertThat(reading.state().get().lines().notes(1).attempts()).isNotEmpty();
    }

    @Test
    void aDiskThatIsFullForTwelveSecondsLosesNothing() {
        ReadingRig rig = live();
        FakeTape tape = new FakeTape();
        rig.tapes.put(1, tape);
        Reading reading = rig.begin(new PacedSource(sound(60), rig.clock));
        rig.pass(12);
        tape.room(0);
        rig.journal.room(0);
        rig.pass(12);
        assertThat(TroubleText.of(reading.state().get().troubles()))
                .contains("sound is not being saved")
                .contains("Notes are not being saved");
        tape.room(Integer.MAX_VALUE);
        rig.journal.room(Integer.MAX_VALUE);
        rig.pass(2);
        assertThat(reading.state().get().troubles().all()).isEmpty();
        reading.tell(new TakeCommand.Quit());
        rig.pass(2);
        assertThat(reading.progress().unsaved()).isEmpty();
        assertThat(rig.journal.events(SessionEvent.RecordingFailed.class)).hasSize(1);
        assertThat(rig.journal.events(SessionEvent.RecordingResumed.class)).hasSize(1);
        assertThat(rig.journal.events(SessionEvent.SoundNotSaved.class)).isEmpty();
        assertThat(tape.closed()).isTrue();
        StreamTime end = rig.journal.events(SessionEvent.TakeEnded.class).get(0).at();
        StreamTime next = StreamTime.ZERO;
        for (AudioBlock block : tape.blocks()) {
            assertThat(block.start()).isEqualTo(next);
            next = block.end();
        }
        assertThat(next).isEqualTo(end);
    }

    @Test
    void tellsOfASyncThatFailedAndOfOneThatWorksAgain() {
        ReadingRig rig = live();
        FakeTape tape = new FakeTape();
        tape.syncFails(true);
        rig.tapes.put(1, tape);
        rig.begin(silent());
        rig.pass(4);
        assertThat(rig.journal.events(SessionEvent.RecordingFailed.class)).hasSize(1);
        tape.syncFails(false);
        rig.pass(2);
        assertThat(rig.journal.events(SessionEvent.RecordingResumed.class)).hasSize(1);
    }

    @Test
    void forcesTheRecordingOnceASecond() {
        ReadingRig rig = live();
        FakeTape tape = new FakeTape();
        rig.tapes.put(1, tape);
        rig.begin(silent());
        rig.pass(5);
        assertThat(tape.synced()).isBetween(4, 5);
    }

    @Test
    void continuesInMemoryIfTheJournalFailsAndSavesTheRestLater() {
        ReadingRig rig = live();
        Reading reading = rig.begin(silent());
        rig.pass(1);
        rig.journal.room(0);
        reading.tell(new NoteCommand.Add(new Remark.Noted(2, "a door", true)));
        rig.pass(1);
        assertThat(TroubleText.of(reading.state().get().troubles())).contains("disk is full");
        assertThat(reading.progress().unsaved()).contains("not saved");
        assertThat(reading.state().get().lines().notes(2).marks()).containsExactly("a door");
        rig.journal.room(1000);
        reading.tell(new TakeCommand.Quit());
        rig.pass(1);
        assertThat(reading.progress().unsaved()).isEmpty();
        assertThat(rig.journal.events(SessionEvent.Remarked.class)).hasSize(1);
        assertThat(rig.journal.events(SessionEvent.TakeEnded.class)).hasSize(1);
    }

    @Test
    void saysAtTheEndWhatCouldNotBeSaved() {
        ReadingRig rig = live();
        Reading reading = rig.begin(silent());
        rig.pass(1);
        rig.journal.room(0);
        reading.tell(new TakeCommand.Quit());
        rig.pass(1);
        assertThat(reading.progress().over()).isTrue();
        assertThat(reading.progress().unsaved()).contains("from 0:0").contains("disk is full");
    }

    @Test
    void ignoresTheVoiceWhileHeld() {
        ReadingRig rig = live();
        Reading reading = rig.begin(quiet(sound(VOICE.seconds())));
        reading.tell(new TakeCommand.Hold());
        rig.pass(0.1);
        assertThat(reading.state().get().takes().held()).isTrue();
        assertThat(rig.journal.events(SessionEvent.Held.class)).hasSize(1);
        reading.tell(new TakeCommand.Resume());
        rig.pass(0.1);
        assertThat(reading.state().get().takes().held()).isFalse();
    }

    @Test
    void fillsLostAudioAndSaysHowMuchItWas() {
        ReadingRig rig = file();
        rig.begin(new FakeAudioSource(ReadingRig.RATE)
                .thenSilence(1)
                .thenLoses(0.5)
                .thenSilence(1));
        rig.pass(0.1);
        SessionEvent.SamplesLost lost =
                rig.journal.events(SessionEvent.SamplesLost.class).get(0);
        assertThat(lost.length()).isEqualTo(StreamTime.ofSeconds(0.5));
    }

    @Test
    void endsInOrderWhenAStageFails() {
        ReadingRig rig = live();
        FakeTape tape = new FakeTape();
        rig.tapes.put(1, tape);
        FakeAudioSource source = silent();
        Reading reading = rig.begin(source);
        rig.pass(1);
        source.close();
        rig.pass(1);
        assertThat(rig.failures).hasSize(1);
        assertThat(reading.fault()).isPresent();
        assertThat(reading.progress().over()).isTrue();
        assertThat(rig.journal.events(SessionEvent.TakeEnded.class)).hasSize(1);
        assertThat(rig.journal.events(SessionEvent.TakeSettled.class)).hasSize(1);
        assertThat(tape.closed()).isTrue();
        assertThat(rig.runner().roles()).isEmpty();
    }

    private static ReadingRig file() {
        return new ReadingRig(SCRIPT, VOICE.hypotheses(), false);
    }

    private static ReadingRig live() {
        return new ReadingRig(SCRIPT, VOICE.hypotheses(), true);
    }

    private static FakeAudioSource sound(double seconds) {
        return new FakeAudioSource(ReadingRig.RATE).thenSilence(seconds);
    }

    /** A live source that never has anything to give. */
    private static FakeAudioSource silent() {
        return quiet(new FakeAudioSource(ReadingRig.RATE));
    }

    private static FakeAudioSource quiet(FakeAudioSource source) {
        for (int i = 0; i < 100_000; i++) {
            source.then(new AudioRead.NothingYet());
        }
        return source;
    }
}
