package org.bookholder.view;

import static org.assertj.core.api.Assertions.assertThat;

import org.bookholder.follow.model.Outcome;
import org.bookholder.session.Mover;
import org.bookholder.session.PickupRound;
import org.bookholder.session.RoundCommand;
import org.bookholder.view.Frame.Mark;
import org.bookholder.view.cue.Palette;
import org.bookholder.view.input.Action;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What the window shows and asks of the pickup round, on a lesson of which lines 3 and 7 are to be picked up. */
final class PickupRoundViewTest {
    private static final PickupRound AT_3 = PickupRound.NONE.at(3, 0);

    private final StandIn session = new StandIn(SampleState.lesson()
            .outcome(3, Outcome.SKIPPED)
            .outcome(7, Outcome.SKIPPED)
            .at(11, 1));
    private final Scene scene = session.scene();

    @Test
    void oneKeyBeginsIt() {
        press(Action.ROUND);
        assertThat(session.told()).containsExactly(new RoundCommand.Begin());
    }

    @Test
    void theLineComesWithTheLineBeforeItToLeadIn() {
        session.comesTo(AT_3);
        session.becomes(session.sample().at(2, 1).movedBy(Mover.HAND));
        Frame view = pass(2);
        assertThat(colourOf(view, 2)).isEqualTo(Palette.LEAD_IN);
        assertThat(colourOf(view, 3)).isEqualTo(Palette.COMING);
        assertThat(colourOf(view, 4)).isEqualTo(Palette.RESTING);
        assertThat(captions(view)).contains("pickup 1 of 2", "Page Down: leave it and go on");
    }

    @Test
    void aLineReadCleanIsTicked() {
        session.comesTo(AT_3);
        pass(1);
        session.becomes(session.sample().outcome(3, Outcome.CLEAN).at(4, 1));
        session.comesTo(AT_3.ticking());
        Frame ticked = pass(0.5);
        assertThat(ticked.rows()).anyMatch(r -> r.mark() == Mark.TICK);
        assertThat(captions(ticked)).contains("clean");
    }

    @Test
    void aLineThatComesOnceMoreSaysWhy() {
        session.comesTo(AT_3.again("not heard"));
        assertThat(captions(pass(0.3))).contains("once more: not heard");
    }

    @Test
    void whenNothingIsLeftItShowsThatThereIsNothing() {
        session.comesTo(PickupRound.NONE.at(7, 0));
        pass(1);
        session.becomes(session.sample().outcome(3, Outcome.CLEAN).outcome(7, Outcome.CLEAN));
        session.comesTo(PickupRound.NONE);
        assertThat(pass(2).page().orElseThrow().page().heading()).isEqualTo("Nothing to pick up");
    }

    @Test
    void whenItIsEndedItSaysSo() {
        session.comesTo(AT_3);
        session.becomes(session.sample().at(2, 1).movedBy(Mover.HAND));
        pass(1);
        session.comesTo(PickupRound.NONE);
        Frame view = pass(0.2);
        assertThat(captions(view)).contains("pickup round ended");
        assertThat(colourOf(view, 4)).isNotEqualTo(Palette.RESTING);
    }

    @Test
    void aLineIsLeftAndBroughtOnceMoreWithAClicker() {
        session.comesTo(AT_3);
        press(Action.FORWARD_LINE);
        press(Action.BACK_LINE);
        assertThat(session.told()).containsExactly(new RoundCommand.Leave(), new RoundCommand.Again());
    }

    @ParameterizedTest
    @EnumSource(names = {"QUIT", "ROUND"})
    void theSameKeyAndEscapeEndTheRoundAndNotTheSession(Action action) {
        session.comesTo(AT_3);
        press(action);
        assertThat(scene.closing()).isFalse();
        assertThat(session.told()).containsExactly(new RoundCommand.End());
    }

    @Test
    void withNothingToPickUpItSaysSo() {
        session.becomes(SampleState.lesson());
        press(Action.ROUND);
        assertThat(captions(pass(0.1))).contains("nothing to pick up");
        assertThat(session.told()).isEmpty();
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
