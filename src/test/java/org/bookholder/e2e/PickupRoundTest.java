package org.bookholder.e2e;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Outcome;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.runtime.Reading;
import org.bookholder.runtime.source.PacedSource;
import org.bookholder.script.model.Script;
import org.bookholder.session.LineNotes;
import org.bookholder.session.RoundCommand;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.speech.AudioSource;
import org.bookholder.testing.FakeAudioSource;
import org.bookholder.testing.FakeEars;
import org.bookholder.testing.ReadingRig;
import org.bookholder.testing.Scripts;
import org.bookholder.testing.Spoken;
import org.bookholder.view.Frame;
import org.bookholder.view.Scene;
import org.bookholder.view.input.Action;
import org.bookholder.view.settings.WindowSettings;
import org.junit.jupiter.api.Test;

/**
 * A reading with a skipped and a misread line, then its pickup round: from what the ears hear, through the session, to the
 * picture and back, in virtual time. The misread line is misread once more in the round.
 */
final class PickupRoundTest {
    private static final double STEP = 0.06;
    private static final double LONGEST = 80;
    private static final Script SCRIPT = Scripts.of(
            "Every wheel begins with its hub.",
            "Count the spokes twice before you go on.",
            "Then lace the first side.",
            "Turn the wheel over and lace the other side.",
            "Leave every nipple loose for now.",
            "Tomorrow we bring it back to true.");

    private final List<String> seen = new ArrayList<>();

    @Test
    void bringsUpEachPickupUntilAllAreReadClean() {
        double pressed = lesson().seconds() - 2;
        Spoken voice = lessonAndRound();
        FakeEars ears = new FakeEars(voice.hypotheses());
        ears.hearOnlyMeanwhile();
        ReadingRig rig = new ReadingRig(SCRIPT, ears, true);
        for (int take = 2; take <= 4; take++) {
            rig.alsoHas(microphone(rig));
        }
        Reading reading = rig.begin(microphone(rig));
        rig.pass(STEP);
        Scene scene = new Scene(
                SCRIPT,
                WindowSettings.defaults(),
                (text, face) -> 0.5 * text.length(),
                new Scene.Screen(1920, 1080, 1080, 0),
                ReadingPosition.START);
        List<Integer> before = new ArrayList<>();
        boolean begun = false;
        for (double t = STEP; t < voice.seconds() - 1; t += STEP) {
            rig.pass(STEP);
            if (!begun && t >= pressed) {
                begun = true;
                reading.state().get().lines().pickups().forEach(notes -> before.add(notes.line()));
                scene.act(Action.ROUND, reading.state().get());
            }
            look(scene.advance(reading.state().get(), STEP));
            scene.drainTo(reading::tell);
        }
        assertThat(rig.failures).isEmpty();
        assertThat(before).containsExactly(3, 5);
        assertThat(reading.state().get().lines().pickups()).isEmpty();
        assertThat(seen)
                .containsSubsequence(
                        "pickup 1 of 2",
                        "clean",
                        "pickup 2 of 2",
                        "once more: “tonight” for “now”",
                        "pickup 2 of 2",
                        "clean, and the last",
                        "Nothing to pick up");
        assertLinked(reading, rig);
    }

    /** A kill in the round: the program is started again with the journal, and the round goes on at its line. */
    @Test
    void goesOnAfterAKillWhereItWas() {
        ReadingRig killed = new ReadingRig(SCRIPT, new FakeEars(lesson().hypotheses()), true);
        Reading reading = killed.begin(microphone(killed));
        killed.pass(lesson().seconds() - 2);
        reading.tell(new RoundCommand.Begin());
        killed.pass(STEP);
        reading.tell(new RoundCommand.Leave());
        killed.pass(STEP);
        assertThat(reading.state().get().round().line()).isEqualTo(5);
        SessionState left = Session.apply(Session.begin(SCRIPT, FatigueLimits.defaults()), killed.journal.events());

        ReadingRig rig = new ReadingRig(SCRIPT, new FakeEars(List.of()), true);
        rig.goesOn(left);
        Reading goesOn = rig.begin(microphone(rig));
        rig.pass(STEP);
        assertThat(goesOn.state().get().round().line()).isEqualTo(5);
        assertThat(goesOn.state().get().following().position()).isEqualTo(new ReadingPosition(4, 1));
    }

    /** The lesson with its mistakes. */
    private static Spoken lesson() {
        return new Spoken(0.6)
                .says("every wheel begins with its hub")
                .says("count the spokes twice before you go on")
                .says("turn the wheel over and lace the other side")
                .pauses(2)
                .says("leave every nipple loose for tonight")
                .says("tomorrow we bring it back to true")
                .pauses(4);
    }

    /** The same, and then what is read in the round. */
    private static Spoken lessonAndRound() {
        return lesson().says("count the spokes twice before you go on")
                .says("then lace the first side")
                .pauses(6)
                .says("turn the wheel over and lace the other side")
                .says("leave every nipple loose for tonight")
                .pauses(8)
                .says("turn the wheel over and lace the other side")
                .says("leave every nipple loose for now")
                .pauses(8);
    }

    private static AudioSource microphone(ReadingRig rig) {
        return new PacedSource(new FakeAudioSource(ReadingRig.RATE).thenSilence(LONGEST), rig.clock);
    }

    /** The journal has the attempts of the round, each with its line. */
    private static void assertLinked(Reading reading, ReadingRig rig) {
        LineNotes third = reading.state().get().lines().notes(3);
        assertThat(third.attempts()).hasSize(1);
        assertThat(third.outcome()).isEqualTo(Outcome.CLEAN);
        assertThat(reading.state().get().lines().notes(5).attempts()).hasSize(3);
        List<Attempt> kept = rig.journal.events().stream()
                .filter(SessionEvent.TakeSettled.class::isInstance)
                .flatMap(event -> ((SessionEvent.TakeSettled) event).attempts().stream())
                .toList();
        assertThat(kept).anyMatch(attempt -> attempt.line() == 3 && attempt.outcome() == Outcome.CLEAN);
        assertThat(kept).anyMatch(attempt -> attempt.line() == 5 && attempt.outcome() == Outcome.CLEAN);
    }

    private void look(Frame view) {
        view.captions().stream()
                .filter(caption -> caption.spot() == Frame.Spot.BESIDE)
                .forEach(caption -> note(caption.text()));
        view.page().ifPresent(page -> note(page.page().heading()));
    }

    private void note(String text) {
        if (seen.isEmpty() || !seen.get(seen.size() - 1).equals(text)) {
            seen.add(text);
        }
    }
}
