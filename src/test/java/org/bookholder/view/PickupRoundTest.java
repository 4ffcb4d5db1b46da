package org.bookholder.view;

import static org.assertj.core.api.Assertions.assertThat;

import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.Outcome;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.session.Command;
import org.bookholder.session.Mover;
import org.bookholder.session.TakeCommand;
import org.bookholder.view.Frame.Mark;
import org.bookholder.view.cue.Palette;
import org.bookholder.view.input.Action;
import org.bookholder.view.settings.WindowSettings;
import org.junit.jupiter.api.Test;

/** The pickup round, on a lesson of which lines 3 and 7 are to be picked up. */
final class PickupRoundTest {
    private final StandIn session = new StandIn(SampleState.lesson()
            .outcome(3, Outcome.SKIPPED)
            .outcome(7, Outcome.SKIPPED)
            .at(11, 1));
    private final Scene scene = new Scene(
            session.state().script(),
            WindowSettings.defaults(),
            new Plain(),
            new Scene.Screen(1920, 1080, 1080, 0),
            session.state().following().position());

    @Test
    void oneKeyBringsUpTheFirstPickupWithTheLineBeforeItToLeadIn() {
        press(Action.ROUND);
        assertThat(session.told()).containsExactly(goTo(2));
        Frame view = pass(2);
        assertThat(colourOf(view, 2)).isEqualTo(Palette.LEAD_IN);
        assertThat(colourOf(view, 3)).isEqualTo(Palette.COMING);
        assertThat(colourOf(view, 4)).isEqualTo(Palette.RESTING);
        assertThat(captions(view)).contains("pickup 1 of 2");
    }

    @Test
    void aLineReadCleanIsTickedAndTheNextOneComesUntilNoneIsLeft() {
        press(Action.ROUND);
        pass(1);
        session.becomes(session.sample().outcome(3, Outcome.CLEAN).at(4, 1));
        Frame ticked = pass(0.5);
        assertThat(ticked.rows()).anyMatch(r -> r.mark() == Mark.TICK);
        assertThat(captions(ticked)).contains("clean");
        pass(PickupRound.TICK_SECONDS);
        assertThat(session.told()).containsExactly(goTo(2), goTo(6));
        session.becomes(session.sample().outcome(7, Outcome.CLEAN).at(8, 1));
        Frame over = pass(PickupRound.TICK_SECONDS + 2);
        assertThat(over.page().orElseThrow().page().heading()).isEqualTo("Nothing to pick up");
        assertThat(session.told()).containsExactly(goTo(2), goTo(6), new TakeCommand.Cut());
    }

    @Test
    void aLineMisreadAgainComesOnceMoreAndSaysWhy() {
        session.becomes(session.sample().outcome(3, Outcome.INCOMPLETE));
        press(Action.ROUND);
        session.becomes(session.sample()
                .secondAttempt(3, Outcome.MISREAD, new Deviation(4, "take", "make", Deviation.Kind.SWAPPED, 1)));
        assertThat(captions(pass(0.3))).contains("once more: “make” for “take”");
        pass(PickupRound.AGAIN_SECONDS);
        assertThat(session.told()).containsExactly(goTo(2), goTo(2));
    }

    @Test
    void aLineReadToItsEndIsCutSoThatBothEarsAgreeOnIt() {
        press(Action.ROUND);
        session.becomes(session.sample().at(4, 1));
        assertThat(captions(pass(PickupRound.OVER_SECONDS + 0.3))).contains("listening back");
        assertThat(session.told()).containsExactly(goTo(2), new TakeCommand.Cut());
        session.becomes(session.sample().outcome(3, Outcome.CLEAN));
        pass(PickupRound.TICK_SECONDS + 0.3);
        assertThat(session.told()).endsWith(goTo(6), new TakeCommand.NextTake(new ReadingPosition(6, 1)));
    }

    @Test
    void aLineThatNobodyHeardComesOnceMore() {
        press(Action.ROUND);
        session.becomes(session.sample().at(4, 1));
        assertThat(captions(pass(PickupRound.OVER_SECONDS + PickupRound.PATIENCE_SECONDS + 0.5)))
                .contains("once more: not heard");
    }

    @Test
    void aLineCanBeLeftAndBroughtOnceMoreWithAClicker() {
        press(Action.ROUND);
        press(Action.FORWARD_LINE);
        press(Action.BACK_LINE);
        assertThat(session.told()).containsExactly(goTo(2), goTo(6), goTo(6));
        press(Action.FORWARD_LINE);
        assertThat(session.told()).endsWith(goTo(6), goTo(2));
    }

    @Test
    void withoutARollingTakeItRollsTheNext() {
        session.becomes(session.sample().rolling(false));
        press(Action.ROUND);
        assertThat(session.told()).endsWith(new TakeCommand.NextTake(new ReadingPosition(2, 1)));
    }

    @Test
    void theFirstLineOfAScriptHasNothingToLeadIn() {
        session.becomes(session.sample().outcome(1, Outcome.SKIPPED));
        press(Action.ROUND);
        assertThat(session.told()).containsExactly(goTo(1));
    }

    @Test
    void escapeEndsTheRoundAndNotTheSession() {
        press(Action.ROUND);
        press(Action.QUIT);
        Frame view = pass(1);
        assertThat(scene.closing()).isFalse();
        assertThat(colourOf(view, 4)).isNotEqualTo(Palette.RESTING);
    }

    @Test
    void withNothingToPickUpItSaysSo() {
        session.becomes(SampleState.lesson());
        press(Action.ROUND);
        assertThat(captions(pass(0.1))).contains("nothing to pick up");
        assertThat(session.told()).isEmpty();
    }

    private static Command goTo(int line) {
        return new TakeCommand.GoTo(new ReadingPosition(line, 1), Mover.HAND);
    }

    private void press(Action action) {
        scene.act(action, session.state());
        pass(0.05);
    }

    private Frame pass(double seconds) {
        Frame view = scene.advance(session.state(), 0);
        for (double t = 0; t < seconds; t += 0.05) {
            view = scene.advance(session.state(), 0.05);
            scene.drainTo(session::tell);
        }
        return view;
    }

    private static int colourOf(Frame view, int line) {
        for (Frame.RowView row : view.rows()) {
            for (Frame.Stretch stretch : row.stretches()) {
                if (row.row().pieces().get(stretch.to() - 1).line() == line) {
                    return stretch.rgb();
                }
            }
        }
        throw new AssertionError("line " + line + " is not in sight");
    }

    private static String captions(Frame view) {
        return view.captions().stream().map(Frame.Caption::text).toList().toString();
    }
}
