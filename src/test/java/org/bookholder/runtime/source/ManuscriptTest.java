package org.bookholder.runtime.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Outcome;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.Reading;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.script.model.Script;
import org.bookholder.script.pronounce.ScriptPreparer;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.bookholder.session.LineNotes;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.session.TakeCommand;
import org.bookholder.speech.AudioRead;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.FakeEars;
import org.bookholder.testing.ReadingRig;
import org.bookholder.testing.Scripts;
import org.bookholder.testing.Spoken;
import org.bookholder.wording.TroubleText;
import org.junit.jupiter.api.Test;

/** The script's file is saved in an editor while it is read. */
final class ManuscriptTest implements Manuscript {
    private static final Script SCRIPT =
            Scripts.of("Every wheel begins with its hub.", "Count the spokes twice.", "Then lace the first side.");
    private static final String CHANGED =
            "Wheels are round.\nEvery wheel begins with its hub.\nCount them.\nThen lace the first side.\n";
    private static final Spoken VOICE = new Spoken(0.5)
            .says("every wheel begins with its hub")
            .says("then lace the first side")
            .pauses(0.5);

    private final List<String> kept = new ArrayList<>();
    private final ReadingRig rig = rig();
    private String file = ReadingRig.TEXT;

    @Test
    void theNewTextWaitsForAHoldAndIsThenReadFromTheSamePlace() {
        Reading reading = begin();
        save(CHANGED);
        assertThat(reading.state().get().script()).isEqualTo(SCRIPT);
        assertThat(TroubleText.of(reading.state().get().troubles())).contains("next hold");
        reading.tell(new TakeCommand.Hold());
        rig.pass(0.5);
        SessionState state = reading.state().get();
        assertThat(state.lines().all())
                .extracting(LineNotes::outcome)
                .containsExactly(Outcome.SKIPPED, Outcome.CLEAN, Outcome.SKIPPED, Outcome.CLEAN);
        assertThat(state.following().position()).isEqualTo(new ReadingPosition(5, 1));
        assertThat(state.takes().held()).isTrue();
        assertThat(state.takes().all()).hasSize(2);
        assertThat(state.troubles().all()).isEmpty();
        assertThat(kept).containsExactly(CHANGED);
        assertThat(rig.failures).isEmpty();
    }

    @Test
    void replayingTheEventsGivesTheSameState() {
        Reading reading = begin();
        reading.tell(new TakeCommand.Hold());
        save(CHANGED);
        SessionState again = Session.apply(Session.begin(SCRIPT, FatigueLimits.defaults()), rig.journal.events());
        SessionState state = reading.state().get();
        assertThat(again.lines().all()).isEqualTo(state.lines().all());
        assertThat(again.following().position()).isEqualTo(state.following().position());
        assertThat(again.script().lines()).isEqualTo(state.script().lines());
        assertThat(rig.journal.events(SessionEvent.TextChanged.class)).hasSize(1);
    }

    @Test
    void theNewTextIsFollowed() {
        Spoken more = new Spoken(VOICE.seconds() + 1).says("every wheel begins with its hub count them");
        FakeEars ears = new FakeEars(more.hypotheses());
        ears.hearOnlyMeanwhile();
        ReadingRig other = new ReadingRig(SCRIPT, ears, true);
        other.reads(this);
        other.alsoHas(waiting(waitingFirst().thenSilence(more.seconds() - VOICE.seconds() + 1)));
        Reading reading = other.begin(waiting(new FakeAudioSource(ReadingRig.RATE).thenSilence(VOICE.seconds())));
        file = CHANGED;
        reading.tell(new TakeCommand.Hold());
        other.pass(1.2);
        assertThat(reading.state().get().following().position()).isEqualTo(new ReadingPosition(2, 1));
        reading.tell(new TakeCommand.Resume());
        other.pass(3);
        assertThat(reading.state().get().following().position()).isEqualTo(new ReadingPosition(4, 1));
        reading.tell(new TakeCommand.Cut());
        other.pass(1);
        assertThat(reading.state().get().lines().notes(2).outcome()).isEqualTo(Outcome.CLEAN);
        assertThat(other.failures).isEmpty();
    }

    @Test
    void asidesStayWithTheirLines() {
        Spoken voice = new Spoken(0.5)
                .says("every wheel begins with its hub")
                .says("somebody is at the door")
                .says("count the spokes twice")
                .says("then lace the first side")
                .pauses(0.5);
        for (boolean settledBefore : List.of(false, true)) {
            FakeEars ears = new FakeEars(voice.hypotheses());
            ears.hearOnlyMeanwhile();
            ReadingRig other = new ReadingRig(SCRIPT, ears, true);
            other.reads(this);
            other.alsoHas(waiting(new FakeAudioSource(ReadingRig.RATE)));
            file = ReadingRig.TEXT;
            Reading reading = other.begin(waiting(new FakeAudioSource(ReadingRig.RATE).thenSilence(voice.seconds())));
            other.pass(0.5);
            reading.tell(settledBefore ? new TakeCommand.Cut() : new TakeCommand.Hold());
            other.pass(0.5);
            file = CHANGED;
            other.pass(1.5);
            // Line 1 is line 2 of the changed text.
            assertThat(reading.state().get().lines().asides())
                    .as("settled before the change: " + settledBefore)
                    .singleElement()
                    .satisfies(aside -> assertThat(aside.line()).isEqualTo(2))
                    .satisfies(aside -> assertThat(aside.said()).isEqualTo("somebody is at the door"));
        }
    }

    @Test
    void theNewTextIsUsedAtOnceBetweenTakes() {
        Reading reading = begin();
        reading.tell(new TakeCommand.Cut());
        rig.pass(0.5);
        save(CHANGED);
        assertThat(reading.state().get().script().lines()).hasSize(4);
        assertThat(reading.state().get().takes().all()).hasSize(1);
    }

    @Test
    void anInvalidTextIsNotUsedAndTheReasonIsShown() {
        Reading reading = begin();
        reading.tell(new TakeCommand.Hold());
        save("---\npace: fast\n---\nHello.\n");
        assertThat(reading.state().get().script()).isEqualTo(SCRIPT);
        assertThat(TroubleText.of(reading.state().get().troubles()))
                .contains("not used")
                .contains("pace");
        save(CHANGED);
        assertThat(reading.state().get().troubles().all()).isEmpty();
        assertThat(reading.state().get().script().lines()).hasSize(4);
    }

    @Test
    void aRevertedTextIsForgotten() {
        Reading reading = begin();
        save(CHANGED);
        save(ReadingRig.TEXT);
        assertThat(reading.state().get().troubles().all()).isEmpty();
        reading.tell(new TakeCommand.Hold());
        rig.pass(0.5);
        assertThat(reading.state().get().takes().all()).hasSize(1);
    }

    private Reading begin() {
        rig.reads(this);
        rig.alsoHas(waiting(new FakeAudioSource(ReadingRig.RATE)));
        Reading reading = rig.begin(waiting(new FakeAudioSource(ReadingRig.RATE).thenSilence(VOICE.seconds())));
        rig.pass(0.5);
        return reading;
    }

    private void save(String text) {
        file = text;
        rig.pass(1.5);
    }

    private static ReadingRig rig() {
        FakeEars ears = new FakeEars(VOICE.hypotheses());
        ears.hearOnlyMeanwhile();
        return new ReadingRig(SCRIPT, ears, true);
    }

    /** A live source that has nothing to give for two seconds. */
    private static FakeAudioSource waitingFirst() {
        FakeAudioSource source = new FakeAudioSource(ReadingRig.RATE);
        for (int i = 0; i < 100; i++) {
            source.then(new AudioRead.NothingYet());
        }
        return source;
    }

    /** After what it gives, a live source has nothing more to give. */
    private static FakeAudioSource waiting(FakeAudioSource source) {
        for (int i = 0; i < 100_000; i++) {
            source.then(new AudioRead.NothingYet());
        }
        return source;
    }

    @Override
    public String text() {
        return file;
    }

    @Override
    public PreparedScript prepare(String text) throws ProblemException {
        return ScriptPreparer.prepare(ScriptReader.parse(text, SCRIPT.source(), Format.MARKDOWN), word -> true);
    }

    @Override
    public void keep(String text) {
        kept.add(text);
    }
}
