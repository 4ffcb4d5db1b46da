package org.bookholder.view.cue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.session.Mover;
import org.bookholder.session.Remark;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.testing.Readings;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

final class ProducerWordTest {
    private static final double FRAME = 0.02;

    private static SessionState reading() {
        return Session.apply(
                Session.begin(
                        Scripts.of("Spring is when a hive decides.", "Buy a dozen frames."), FatigueLimits.defaults()),
                List.of(Readings.rolled(1, 0), told("chin up a little")));
    }

    private static SessionEvent told(String text) {
        return new SessionEvent.Remarked(Readings.s(1), new Remark.Told(text));
    }

    private static ProducerWord after(ProducerWord word, SessionState state, double seconds) {
        ProducerWord next = word;
        for (double passed = 0; passed < seconds; passed += FRAME) {
            ProducerWord before = next;
            next = before.after(state, FRAME);
            assertThat(Math.abs(next.light() - before.light()))
                    .as("a step of light")
                    .isLessThan(0.05);
        }
        return next;
    }

    @Test
    void waitsForTheEndOfTheLine() {
        ProducerWord waiting = after(ProducerWord.NONE, reading(), 2);
        assertThat(waiting.light()).isZero();
        SessionState next = Session.apply(
                reading(), new SessionEvent.PositionMoved(Readings.s(3), new ReadingPosition(2, 1), Mover.VOICE, 1));
        ProducerWord shown = after(waiting, next, 2);
        assertThat(shown.text()).isEqualTo("chin up a little");
        assertThat(shown.light()).isEqualTo(1);
    }

    @Test
    void appearsInALongLineTooAndDisappearsByItself() {
        ProducerWord shown = after(ProducerWord.NONE, reading(), ProducerWord.PATIENCE + 1.5);
        assertThat(shown.light()).isEqualTo(1);
        assertThat(after(shown, reading(), 10).text()).isEmpty();
    }

    @Test
    void anEmptyMessageWithdrawsTheLastOne() {
        ProducerWord shown = after(ProducerWord.NONE, reading(), ProducerWord.PATIENCE + 1.5);
        assertThat(shown.after(Session.apply(reading(), told("")), FRAME).text())
                .isEmpty();
    }
}
