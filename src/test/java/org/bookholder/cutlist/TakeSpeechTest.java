package org.bookholder.cutlist;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.broken;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.cut;
import static org.bookholder.testing.Readings.rolled;
import static org.bookholder.testing.Readings.s;

import java.util.List;
import org.bookholder.cutlist.TakeSpeech.Span;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

final class TakeSpeechTest {
    private static final Attempt LINE = complete(1, 2, 2, 5, 3, 5);

    @Test
    void theQuietLastsFromWhatWasSaidBeforeToWhatIsSaidAfter() {
        TakeSpeech speech = speech(new Span(s(1), s(2), true), own(), new Span(s(6), s(7), true));
        assertThat(speech.quietBefore(LINE)).isEqualTo(s(2));
        assertThat(speech.quietAfter(LINE)).isEqualTo(s(6));
    }

    @Test
    void nothingSaidLeavesTheQuietToTheTakesEnds() {
        assertThat(speech(own()).quietBefore(LINE)).isEqualTo(s(0.5));
        assertThat(speech(own()).quietAfter(LINE)).isEqualTo(s(9));
    }

    /** Recognised times may overlap a little. */
    @Test
    void wordsThatOverlapALittleAreNeighboursWithoutQuiet() {
        TakeSpeech speech = speech(new Span(s(1), s(3.04), true), own(), new Span(s(4.96), s(7), true));
        assertThat(speech.quietBefore(LINE)).isEqualTo(s(3));
        assertThat(speech.quietAfter(LINE)).isEqualTo(s(5));
        assertThat(speech(own(), new Span(s(4.96), s(4.99), true)).quietAfter(LINE))
                .isEqualTo(s(9));
    }

    @Test
    void onlyTheEndOfAWholeLineIsReliable() {
        Span whole = new Span(s(1), s(1.8), true);
        Span broken = new Span(s(2), s(2.5), false);
        assertThat(speech(whole, broken, own()).brokenOffBefore(LINE)).isTrue();
        assertThat(speech(broken, new Span(s(2.6), s(2.9), true), own()).brokenOffBefore(LINE))
                .isFalse();
        assertThat(speech(own()).brokenOffBefore(LINE)).isFalse();
    }

    /** Also an aside is broken-off speech: its end is only where the recogniser lost it. */
    @Test
    void speechOfAnotherTakeDoesNotCount() {
        SessionState state = Session.apply(
                Session.begin(Scripts.sized(100, 2, 5), FatigueLimits.defaults()),
                List.of(
                        rolled(1, 0),
                        cut(1, 10),
                        new SessionEvent.TakeSettled(
                                s(10),
                                1,
                                List.of(broken(1, 1, 1, 3, 8, 9)),
                                List.of(new Aside(1, s(9.2), s(9.6), "again please", 1))),
                        rolled(2, 10),
                        cut(2, 20),
                        new SessionEvent.TakeSettled(
                                s(20),
                                2,
                                List.of(complete(2, 1, 1, 5, 11, 13), complete(2, 2, 2, 5, 15, 17)),
                                List.of(new Aside(2, s(14), s(14.5), "next", 1)))));
        TakeSpeech second = TakeSpeech.of(state, state.takes().all().get(1));
        assertThat(second.spans())
                .containsExactly(
                        new Span(s(11), s(13), true), new Span(s(14), s(14.5), false), new Span(s(15), s(17), true));
        assertThat(second.brokenOffBefore(complete(2, 1, 1, 5, 11, 13))).isFalse();
        assertThat(second.brokenOffBefore(complete(2, 2, 2, 5, 15, 17))).isTrue();
    }

    @Test
    void speechBetweenTwoLinesInterruptsThem() {
        Attempt next = complete(1, 3, 3, 5, 7, 8);
        Span after = new Span(s(7), s(8), true);
        assertThat(speech(own(), after).interrupted(LINE, next)).isFalse();
        assertThat(speech(own(), new Span(s(5.5), s(6), false), after).interrupted(LINE, next))
                .isTrue();
        assertThat(speech(own(), new Span(s(5), s(7), false), after).interrupted(LINE, next))
                .isTrue();
    }

    private static Span own() {
        return new Span(s(3), s(5), true);
    }

    private static TakeSpeech speech(Span... spans) {
        return new TakeSpeech(s(0.5), s(9), List.of(spans));
    }
}
