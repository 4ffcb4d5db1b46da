package org.bookholder.view.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.follow.model.FollowState;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.script.model.Script;
import org.bookholder.session.Command;
import org.bookholder.session.Mover;
import org.bookholder.session.TakeCommand;
import org.bookholder.view.Places;
import org.bookholder.view.Plain;
import org.bookholder.view.SampleState;
import org.bookholder.view.layout.Geometry;
import org.bookholder.view.layout.Layout;
import org.bookholder.view.layout.Row;
import org.bookholder.view.layout.Typesetter;
import org.bookholder.view.settings.WindowSettings;
import org.junit.jupiter.api.Test;

/** Voice, steady pace and hand, in virtual time. */
final class SteeringTest {
    private static final double FRAME = 1.0 / 60;
    private static final Geometry GEOMETRY = Geometry.of(WindowSettings.defaults(), 0, 1080, 1920, 1080);

    private final Script script = SampleState.lessonScript();
    private final Layout layout = Typesetter.set(script, GEOMETRY, new Plain());
    private final List<Command> told = new ArrayList<>();
    private SampleState sample = SampleState.lesson().at(1, 1);

    @Test
    void steadilyItGoesAtTheTargetPaceAfterAGentleStart() {
        Steering steering = steering(Mover.STEADY);
        double start = words(steering);
        pass(steering, 0.3);
        assertThat(steering.steadySpeed()).isBetween(0.3, 1.0);
        pass(steering, 20);
        double before = words(steering);
        pass(steering, 12);
        // 100 words a minute is 20 words in 12 seconds.
        assertThat(words(steering) - before).isCloseTo(20, within(0.5));
        assertThat(before).isGreaterThan(start);
    }

    @Test
    void steadilyItStopsGentlyWhenTheTakeIsHeldAndWaitsThere() {
        Steering steering = steering(Mover.STEADY);
        pass(steering, 10);
        sample = sample.held(true);
        pass(steering, 0.2);
        assertThat(steering.steadySpeed()).isBetween(0.5, 1.5);
        pass(steering, 6);
        double rests = steering.aim().height();
        pass(steering, 5);
        assertThat(steering.aim().height()).isCloseTo(rests, within(0.5));
        assertThat(steering.aim().speed()).isLessThan(0.5);
    }

    @Test
    void steadilyItTellsTheSessionOfEachRowAndEndsAtTheLastWord() {
        Steering steering = steering(Mover.STEADY);
        pass(steering, 90);
        assertThat(moves()).isNotEmpty().allMatch(m -> m.mover() == Mover.STEADY);
        assertThat(moves()).isSortedAccordingTo((a, b) -> a.position().compareTo(b.position()));
        assertThat(steering.aim().height())
                .isEqualTo(layout.readRows().get(layout.readRows().size() - 1).middle());
        assertThat(steering.aim().speed()).isZero();
    }

    @Test
    void steadilySendsNothingWhileTheSessionFollowsTheVoiceAtTheEyeLine() {
        Steering steering = steering(Mover.STEADY);
        for (int word = 0; word < 40; word++) {
            ReadingPosition read = layout.positionAt(word);
            voiceAt(read.line(), read.word());
            pass(steering, 0.6);
        }
        assertThat(moves()).isEmpty();
        pass(steering, 12);
        assertThat(moves()).isNotEmpty();
    }

    @Test
    void byHandNothingMovesByItself() {
        Steering steering = steering(Mover.HAND);
        double start = steering.aim().height();
        pass(steering, 5);
        assertThat(steering.aim().height()).isEqualTo(start);
        steering.toRow(1);
        pass(steering, 1);
        assertThat(steering.aim().height()).isEqualTo(layout.readRows().get(1).middle());
        assertThat(moves()).last().satisfies(m -> assertThat(m.mover()).isEqualTo(Mover.HAND));
    }

    @Test
    void theHandWinsOverTheVoiceAndTheVoiceTakesOverWhenItHasFoundItsPlace() {
        Steering steering = steering(Mover.VOICE);
        voiceAt(2, 3);
        pass(steering, 1);
        steering.byHand(4);
        double byHand = steering.aim().height();
        voiceAt(2, 4);
        pass(steering, 0.3);
        assertThat(steering.aim().height()).isEqualTo(byHand);
        pass(steering, 1);
        voiceAt(7, 2);
        pass(steering, 1);
        double voice = layout.aim(new ReadingPosition(7, 2));
        assertThat(steering.aim().height()).isCloseTo(voice, within(0.5 * GEOMETRY.pitch()));
    }

    @Test
    void goingToALinePutsItsRowAtTheEyeLineAtOnceAndTellsTheSession() {
        Steering steering = steering(Mover.VOICE);
        ReadingPosition line = new ReadingPosition(5, 1);
        steering.goTo(line);
        assertThat(told).containsExactly(new TakeCommand.GoTo(line, Mover.HAND));
        Row row = layout.readRows().get(layout.readRowOf(line));
        assertThat(steering.aim().height()).isCloseTo(row.middle(), within(0.5 * GEOMETRY.pitch()));
        assertThat(steering.current(sample.state())).isEqualTo(line);
    }

    @Test
    void keysPressedInQuickSuccessionAddUpBeforeTheSessionHasAnswered() {
        Steering steering = steering(Mover.VOICE);
        for (int i = 0; i < 3; i++) {
            steering.goTo(Places.lineForward(script, steering.current(sample.state())));
            steering.advance(sample.state(), FRAME);
        }
        assertThat(steering.current(sample.state())).isEqualTo(new ReadingPosition(4, 1));
    }

    @Test
    void anotherPersonCanMoveTheText() {
        Steering steering = steering(Mover.VOICE);
        pass(steering, 1);
        sample = sample.at(7, 1).movedBy(Mover.HAND);
        pass(steering, 0.1);
        double wanted = layout.aim(new ReadingPosition(7, 1));
        assertThat(steering.aim().height()).isCloseTo(wanted, within(0.2 * GEOMETRY.pitch()));
    }

    @Test
    void aRevisionByAFewWordsMovesNeitherTextNorColours() {
        Steering steering = steering(Mover.VOICE);
        voiceAt(2, 8);
        pass(steering, 2);
        double height = steering.aim().height();
        sample = sample.at(2, 5);
        pass(steering, 0.5);
        assertThat(steering.aim().height()).isEqualTo(height);
        assertThat(steering.accepted()).isEqualTo(new ReadingPosition(2, 8));
        pass(steering, 2);
        assertThat(steering.accepted()).isEqualTo(new ReadingPosition(2, 5));
        assertThat(steering.aim().height()).isLessThan(height);
    }

    @Test
    void whenThePlaceIsLostTheTextWaits() {
        Steering steering = steering(Mover.VOICE);
        voiceAt(2, 8);
        pass(steering, 0.5);
        sample = sample.follow(FollowState.LOST);
        pass(steering, 1);
        double height = steering.aim().height();
        pass(steering, 5);
        assertThat(steering.aim().height()).isCloseTo(height, within(0.5));
    }

    private Steering steering(Mover way) {
        return new Steering(layout, way, ReadingPosition.START, told::add);
    }

    private void voiceAt(int line, int word) {
        sample = sample.at(line, word).movedBy(Mover.VOICE);
    }

    private void pass(Steering steering, double seconds) {
        for (double t = 0; t < seconds; t += FRAME) {
            steering.advance(sample.state(), FRAME);
        }
    }

    private List<TakeCommand.GoTo> moves() {
        return told.stream()
                .filter(TakeCommand.GoTo.class::isInstance)
                .map(TakeCommand.GoTo.class::cast)
                .toList();
    }

    /** Spoken words up to the aim, found from its height. */
    private double words(Steering steering) {
        double low = 0;
        double high = layout.spoken();
        while (high - low > 1e-3) {
            double middle = (low + high) / 2;
            if (layout.aimAtSpoken(middle) < steering.aim().height()) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
