package org.bookholder.runtime;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import org.bookholder.follow.model.Outcome;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.source.Manuscript;
import org.bookholder.runtime.source.PacedSource;
import org.bookholder.runtime.stage.BackgroundTasks;
import org.bookholder.runtime.stage.Criticality;
import org.bookholder.runtime.stage.Stage;
import org.bookholder.runtime.stage.StageFault;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.script.model.Script;
import org.bookholder.session.NoteCommand;
import org.bookholder.session.Remark;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.session.TakeCommand;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.FakeEars;
import org.bookholder.testing.ReadingRig;
import org.bookholder.testing.Scripts;
import org.bookholder.testing.Spoken;
import org.bookholder.wording.TroubleText;
import org.junit.jupiter.api.Test;

/** A fault in each stage, half a minute into a paced reading, in virtual time: docs/faults.md lists what is to happen. */
final class StageFaultsTest {
    private static final double FAULT = 30;
    private static final List<String> LINES = List.of(
            "Every wheel begins with its hub.",
            "Count the spokes twice before you go on.",
            "Then lace the first side of it.",
            "Turn the wheel over and lace the other side.",
            "Leave every nipple loose for now.",
            "Hang the rim in the stand.",
            "Look along it with one eye closed.",
            "Mark where it leaves the straight line.",
            "Tighten four nipples by half a turn.",
            "Wait until the metal has settled again.",
            "Press the spokes together in pairs.",
            "Listen for the note that each one gives.",
            "Loosen those which sound too high.",
            "Spin it slowly past your thumb.",
            "Put the tape on without a fold.",
            "Pump the tyre and let it rest overnight.",
            "Tomorrow we bring it back to true.");
    private static final Script SCRIPT = Scripts.of(LINES.toArray(String[]::new));
    private static final Spoken VOICE = voice();

    private final ReadingRig rig = rig();
    private final List<String> told = new ArrayList<>();

    @Test
    void aReadingWithoutFaultsReachesItsEnd() {
        read();
        assertThat(told).isEmpty();
        assertThat(rig.log()).isEmpty();
        assertIsReadToItsEnd();
        assertThat(outcomes()).containsOnly(Outcome.CLEAN);
    }

    // --- restartable

    @Test
    void theScriptEarRestartsAndContinuesWithTheCurrentSound() {
        rig.plant("script ear", FAULT, 1);
        Reading reading = read();
        assertThat(told)
                .containsExactly("Your voice is not heard for a moment: speech recognition failed and starts again.");
        assertThat(rig.log()).contains("stage 'script ear': failed, is started again", "a planted fault");
        assertIsReadToItsEnd();
        assertThat(reading.progress().unheard().seconds()).isBetween(0.5, 4.0);
        assertThat(outcomes())
                .as("what was not heard is not judged, and nothing is skipped")
                .contains(Outcome.NOT_JUDGED)
                .containsOnly(Outcome.CLEAN, Outcome.NOT_JUDGED);
        assertThat(outcomes().stream().filter(o -> o == Outcome.NOT_JUDGED).count())
                .isLessThanOrEqualTo(2);
        assertThat(rig.journal.events(SessionEvent.NotJudged.class))
                .singleElement()
                .satisfies(e -> assertThat(e.stretch().end().seconds()).isBetween(FAULT + 0.4, FAULT + 0.8));
    }

    @Test
    void theReadingContinuesWithoutAScriptEarThatKeepsFailing() {
        rig.plant("script ear", FAULT, 6);
        Reading reading = read();
        assertThat(told)
                .containsExactly(
                        "Your voice is not heard for a moment: speech recognition failed and starts again.",
                        "Speech recognition has failed; move the text by hand. The recording goes on.");
        assertThat(rig.log().split("is started again", -1)).hasSize(6);
        assertThat(rig.log()).contains("stage 'script ear': failed, is done without");
        assertSoundIsWhole();
        assertThat(rig.journal.events(SessionEvent.SoundMeasured.class))
                .as("what comes by the ear comes on")
                .last()
                .satisfies(e -> assertThat(e.at().seconds()).isGreaterThan(VOICE.seconds() - 2));
        assertEndsWhenAsked(reading);
    }

    @Test
    void theOpenEarStartsAgain() {
        rig.plant("open ear", FAULT, 1);
        read();
        assertThat(told).containsExactly("Checking your words failed and starts again.");
        assertThat(rig.log()).contains("stage 'open ear': failed, is started again", "a planted fault");
        assertIsReadToItsEnd();
    }

    @Test
    void theReadingContinuesWithoutAnOpenEarThatKeepsFailing() {
        rig.plant("open ear", FAULT, 6);
        Reading reading = read();
        assertThat(told)
                .containsExactly(
                        "Checking your words failed and starts again.",
                        "Checking your words has failed for this take; listen to its lines yourself.");
        assertSoundIsWhole();
        assertEndsWhenAsked(reading);
    }

    @Test
    void theDeskStartsAgain() {
        rig.plant("desk", FAULT, 1);
        rig.alsoRuns(new Counting("desk", Criticality.RESTARTABLE));
        read();
        assertThat(told).containsExactly("The desk failed and starts again.");
        assertThat(rig.log()).contains("stage 'desk': failed, is started again", "a planted fault");
        assertIsReadToItsEnd();
    }

    @Test
    void aFaultInATaskOfTheDeskCostsOnlyThatTask() {
        BackgroundTasks tasks = new BackgroundTasks();
        List<String> done = new ArrayList<>();
        rig.alsoRuns(tasks);
        begin();
        pass(FAULT);
        tasks.ask(() -> {
            throw new IllegalStateException("no room for the files");
        });
        tasks.ask(() -> done.add("the next one"));
        pass(VOICE.seconds() + 1 - FAULT);
        assertThat(told).containsExactly("A part of the program has failed (errands); the reading goes on.");
        assertThat(rig.log()).contains("stage 'errands': failed, is started again", "no room for the files");
        assertThat(done).containsExactly("the next one");
        assertIsReadToItsEnd();
    }

    // --- optional

    @Test
    void theReadingContinuesWithoutTheScriptsFile() {
        rig.plant("manuscript", FAULT, 1);
        rig.reads(new Unchanged());
        read();
        assertThat(told).containsExactly("Changes to the script are not picked up any more.");
        assertThat(rig.log()).contains("stage 'manuscript': failed, is done without", "a planted fault");
        assertIsReadToItsEnd();
    }

    @Test
    void aFaultInASavedScriptOnlyEndsTheWatchingOfTheFile() {
        Unchanged file = new Unchanged();
        rig.reads(file);
        Reading reading = begin();
        pass(FAULT);
        file.text = "a text whose preparation fails";
        pass(VOICE.seconds() + 1 - FAULT);
        assertThat(told).containsExactly("Changes to the script are not picked up any more.");
        assertThat(rig.log()).contains("stage 'manuscript': failed", "no parser for this");
        assertThat(reading.fault()).isEmpty();
        assertIsReadToItsEnd();
    }

    @Test
    void theReadingContinuesWithoutForcingItsSoundToDisk() {
        rig.plant("recording", FAULT, 1);
        read();
        assertThat(told).containsExactly("A part of the program has failed (recording); the reading goes on.");
        assertThat(rig.log()).contains("stage 'recording': failed, is done without", "a planted fault");
        assertIsReadToItsEnd();
    }

    @Test
    void theReadingContinuesWithoutTheSoundWatch() {
        rig.plant("sound watch", FAULT, 1);
        read();
        assertThat(told).containsExactly("The sound is not checked any more; it is still recorded.");
        assertThat(rig.log()).containsOnlyOnce("stage '").contains("stage 'sound watch': failed", "a planted fault");
        assertThat(rig.journal.events(SessionEvent.SoundMeasured.class))
                .as("measured each second until the fault")
                .hasSizeBetween(29, 30);
        assertIsReadToItsEnd();
        assertThat(outcomes()).containsOnly(Outcome.CLEAN);
    }

    @Test
    void theReadingContinuesWithoutTheMarkingOfSpoiledLines() {
        rig.plant("spoiled lines", FAULT, 1);
        begin(VOICE.clipped(ReadingRig.RATE, 2, LINES.size()));
        pass(VOICE.seconds() + 1);
        assertThat(told).containsExactly("The sound is not checked any more; it is still recorded.");
        assertThat(rig.log()).containsOnlyOnce("stage '").contains("stage 'spoiled lines': failed", "a planted fault");
        assertThat(rig.journal.events(SessionEvent.PickupMarked.class))
                .extracting(SessionEvent.PickupMarked::line)
                .as("both lines are clipped, the last one after the fault")
                .containsExactly(2);
        assertIsReadToItsEnd();
    }

    @Test
    void bothClippedLinesAreMarkedWithoutAFault() {
        begin(VOICE.clipped(ReadingRig.RATE, 2, LINES.size()));
        pass(VOICE.seconds() + 1);
        assertThat(rig.journal.events(SessionEvent.PickupMarked.class))
                .extracting(SessionEvent.PickupMarked::line)
                .containsExactly(2, LINES.size());
    }

    @Test
    void aNoteThatCanNeverBeWrittenCostsOnlyItself() {
        rig.journal.unwritable(SessionEvent.Remarked.class::isInstance);
        Reading reading = begin();
        pass(FAULT);
        reading.tell(new NoteCommand.Add(new Remark.Noted(2, "a door", true)));
        pass(VOICE.seconds() + 1 - FAULT);
        assertThat(told)
                .containsExactly("One note cannot be saved and is lost when the session ends; the others are saved.");
        assertThat(rig.log()).contains("stage 'one note': failed, is done without", "can never be written");
        assertThat(state().lines().notes(2).marks()).containsExactly("a door");
        assertThat(reading.progress().unsaved()).startsWith("1 note, from 0:30 on, cannot be saved");
        assertIsReadToItsEnd();
    }

    @Test
    void theReadingContinuesWithoutTheLog() {
        rig.plant("log", FAULT, 1);
        read();
        assertThat(told).containsExactly("A part of the program has failed (log); the reading goes on.");
        assertIsReadToItsEnd();
    }

    // --- essential

    @Test
    void aFaultOfTheCaptureEndsTheTakeInOrder() {
        assertEndsInOrder("capture");
        assertThat(rig.journal.events(SessionEvent.TakeSettled.class)).hasSize(1);
    }

    @Test
    void aFaultOfTheSessionEndsTheTakeInOrder() {
        assertEndsInOrder("session");
    }

    @Test
    void aFaultOfTheJournalEndsTheTakeInOrderAndTheRestIsWritten() {
        assertEndsInOrder("journal");
        assertThat(rig.journal.events(SessionEvent.TakeSettled.class)).hasSize(1);
    }

    private void assertEndsInOrder(String role) {
        rig.plant(role, FAULT, 1);
        Reading reading = read();
        assertThat(reading.progress().over()).isTrue();
        assertThat(reading.fault()).map(StageFault::role).isEqualTo(Optional.of(role));
        assertThat(rig.log()).containsOnlyOnce("stage '").contains("stage '" + role + "': failed, the session ends");
        assertThat(rig.log()).contains("a planted fault");
        assertThat(rig.runner().roles()).isEmpty();
        assertThat(Objects.requireNonNull(rig.tapes.get(1)).closed()).isTrue();
        double recorded = Objects.requireNonNull(rig.tapes.get(1)).blocks().size() / 25.0;
        assertThat(recorded).isBetween(FAULT - 0.1, FAULT + 0.1);
        assertThat(rig.journal.events(SessionEvent.TakeEnded.class))
                .singleElement()
                .satisfies(end -> assertThat(end.at().seconds()).isBetween(FAULT - 0.1, FAULT + 0.1));
        assertThat(reading.state().get().lines().notes(5).outcome()).isEqualTo(Outcome.CLEAN);
        assertThat(reading.progress().unsaved()).isEmpty();
    }

    // --- a reading of which everything that a person is told is noted

    private Reading read() {
        Reading reading = begin();
        pass(VOICE.seconds() + 1);
        return reading;
    }

    private Reading begin() {
        return begin(VOICE.sound(ReadingRig.RATE));
    }

    private Reading begin(short[] sound) {
        return rig.begin(new PacedSource(FakeAudioSource.of(ReadingRig.RATE, sound), rig.clock));
    }

    private void pass(double seconds) {
        for (int i = 0; i < seconds * 10; i++) {
            rig.pass(0.1);
            String trouble = TroubleText.of(state().troubles());
            if (!trouble.isEmpty()
                    && (told.isEmpty() || !told.get(told.size() - 1).equals(trouble))) {
                told.add(trouble);
            }
        }
    }

    private SessionState state() {
        return rig.reading().state().get();
    }

    private List<Outcome> outcomes() {
        return IntStream.rangeClosed(1, LINES.size())
                .mapToObj(line -> state().lines().notes(line).outcome())
                .toList();
    }

    private void assertIsReadToItsEnd() {
        assertThat(state().following().position().line()).isEqualTo(LINES.size() + 1);
        assertSoundIsWhole();
        assertThat(rig.journal.events(SessionEvent.TakeSettled.class)).hasSize(1);
        assertThat(rig.journal.events(SessionEvent.TakeEnded.class)).hasSize(1);
    }

    private void assertSoundIsWhole() {
        assertThat(Objects.requireNonNull(rig.tapes.get(1)).blocks().size() / 25.0)
                .isBetween(VOICE.seconds() - 0.1, VOICE.seconds() + 0.1);
        assertThat(Objects.requireNonNull(rig.tapes.get(1)).closed()).isTrue();
    }

    private void assertEndsWhenAsked(Reading reading) {
        reading.tell(new TakeCommand.Quit());
        rig.pass(1);
        assertThat(reading.progress().over()).isTrue();
        assertThat(rig.runner().roles()).isEmpty();
        assertThat(rig.journal.events(SessionEvent.TakeSettled.class)).hasSize(1);
    }

    private static ReadingRig rig() {
        FakeEars ears = new FakeEars(VOICE.hypotheses());
        ears.hearOnlyMeanwhile();
        return new ReadingRig(SCRIPT, ears, true);
    }

    private static Spoken voice() {
        Spoken voice = new Spoken(0.5);
        LINES.forEach(line -> voice.says(line.toLowerCase(java.util.Locale.ROOT).replace(".", "")));
        return voice.pauses(1);
    }

    /** A stage that does nothing but be there. */
    private record Counting(String role, Criticality criticality) implements Stage {
        @Override
        public int doWork() {
            return 0;
        }
    }

    /** A script's file of which a changed text cannot be prepared. */
    private static final class Unchanged implements Manuscript {
        private String text = ReadingRig.TEXT;

        @Override
        public String text() {
            return text;
        }

        @Override
        public PreparedScript prepare(String changed) throws ProblemException {
            throw new IllegalStateException("no parser for this");
        }

        @Override
        public void keep(String changed) {
            throw new UnsupportedOperationException("nothing is changed");
        }
    }
}
