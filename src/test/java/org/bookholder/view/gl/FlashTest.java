package org.bookholder.view.gl;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.function.UnaryOperator;
import org.bookholder.fatigue.BreakAdvice.Urgency;
import org.bookholder.follow.model.FollowState;
import org.bookholder.follow.model.Outcome;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Mover;
import org.bookholder.session.Trouble;
import org.bookholder.testing.Needs;
import org.bookholder.view.SampleState;
import org.bookholder.view.Scene;
import org.bookholder.view.input.Action;
import org.bookholder.view.settings.WindowSettings;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Three flashes or below threshold: WCAG 2.2, success criterion 2.3.1, counted over the pictures of a reading at 1024 by
 * 768 as the standard measures them.
 */
final class FlashTest {
    private static final int WIDTH = 1024;
    private static final int HEIGHT = 768;
    private static final int RATE = 30;

    private Easel easel;

    @BeforeEach
    void setUp() throws ProblemException {
        Needs.display();
        easel = Easel.of(WIDTH, HEIGHT);
    }

    @AfterEach
    void tearDown() {
        if (easel != null) {
            easel.close();
        }
    }

    @Test
    void aReadingWithJumpsAndBreakWarningsDoesNotFlash() {
        FlashMeter meter = new FlashMeter(WIDTH, HEIGHT, RATE);
        SampleState state = SampleState.lesson();
        Scene scene = easel.scene(state.script(), WindowSettings.defaults());
        for (int i = 0; i < 12 * RATE; i++) {
            double second = (double) i / RATE;
            SampleState now = reading(state, second);
            if (i == 9 * RATE) {
                scene.act(Action.KEYS, now.state());
            }
            if (i == 10 * RATE) {
                scene.act(Action.PICKUPS, now.state());
            }
            meter.add(easel.draw(scene.advance(now.state(), 1.0 / RATE))::at);
        }
        assertThat(meter.worstShare()).isLessThanOrEqualTo(0.25);
    }

    @Test
    void jumpsInQuickSuccessionDoNotFlash() {
        FlashMeter meter = new FlashMeter(WIDTH, HEIGHT, RATE);
        SampleState state = SampleState.lesson().at(1, 1);
        Scene scene = easel.scene(state.script(), WindowSettings.defaults());
        for (int i = 0; i < 4 * RATE; i++) {
            boolean there = i / 6 % 2 == 1;
            SampleState now = there ? state.at(9, 1) : state.at(1, 1);
            meter.add(easel.draw(scene.advance(now.state(), 1.0 / RATE))::at);
        }
        assertThat(meter.worstShare()).isLessThanOrEqualTo(0.25);
    }

    /** Hold and go on, cut, take again, jump, end and back, notices and what is wrong, cautions and pages, twice a second. */
    @ParameterizedTest
    @EnumSource
    void noTransitionFlashesEvenIfItIsRepeated(Transition transition) {
        FlashMeter meter = new FlashMeter(WIDTH, HEIGHT, RATE);
        SampleState start = SampleState.lesson().at(4, 2);
        Scene scene = easel.scene(start.state().script(), WindowSettings.defaults());
        for (int i = 0; i < 2 * RATE; i++) {
            boolean changed = i / 8 % 2 == 1;
            SampleState now = changed ? transition.change.apply(start) : start;
            if (i % 8 == 0 && i > 0) {
                transition.key.ifPresent(key -> scene.act(key, now.state()));
            }
            meter.add(easel.draw(scene.advance(now.state(), 1.0 / RATE))::at);
        }
        assertThat(meter.worstShare()).isLessThanOrEqualTo(0.25);
    }

    /** What can change from one picture to the next. */
    @SuppressWarnings("ImmutableEnumChecker") // the functions hold nothing
    private enum Transition {
        HOLD(state -> state.held(true)),
        CUT(state -> state.rolling(false)),
        TAKE_AGAIN(state -> state.at(1, 1)),
        JUMP(state -> state.at(9, 1)),
        END(state -> state.at(11, 1)),
        LOST(state -> state.follow(FollowState.LOST)),
        PACE(state -> state.live(160)),
        PICKUP(state -> state.outcome(2, Outcome.MISREAD)),
        NOTICE(state -> state.trouble(new Trouble(Trouble.Kind.TEXT_WAITS, ""))),
        WRONG(state -> state.trouble(new Trouble(Trouble.Kind.BEHIND, ""))),
        BREAK_OVERDUE(state -> state.urgency(Urgency.OVERDUE)),
        LIST(Action.PICKUPS),
        KEYS(Action.KEYS),
        CUES(Action.CUES),
        GLASS(Action.GLASS),
        UPSIDE_DOWN(Action.UPSIDE_DOWN),
        LARGER(Action.LARGER);

        private final UnaryOperator<SampleState> change;
        private final Optional<Action> key;

        Transition(UnaryOperator<SampleState> change) {
            this.change = change;
            this.key = Optional.empty();
        }

        Transition(Action key) {
            this.change = state -> state;
            this.key = Optional.of(key);
        }
    }

    @Test
    void theMeterSeesWhatFlashes() {
        assertThat(blinking(5)).isEqualTo(1);
        assertThat(blinking(3)).isZero();
    }

    /** The worst share when the whole picture goes on and off so many times a second. */
    private static double blinking(int times) {
        FlashMeter meter = new FlashMeter(WIDTH, HEIGHT, RATE);
        for (int i = 0; i < 2 * RATE; i++) {
            int rgb = (int) (2.0 * times * i / RATE) % 2 == 0 ? 0xFFFFFF : 0x000000;
            meter.add((x, y) -> rgb);
        }
        return meter.worstShare();
    }

    private static SampleState reading(SampleState start, double second) {
        int word = (int) (second * 2.2);
        SampleState state = second < 4 ? start.at(1 + word / 9, 1 + word % 9) : start.at(7, 1 + word % 5);
        if (second > 4.5 && second < 6) {
            state = state.at(2, 1);
        }
        state = state.live(second < 3 ? 101 : second < 6 ? 150 : 60);
        state = second > 2 ? state.urgency(Urgency.COMING) : state;
        state = second > 5 ? state.urgency(Urgency.DUE) : state;
        state = second > 7 ? state.urgency(Urgency.OVERDUE) : state;
        state = second > 3 ? state.outcome(2, Outcome.SKIPPED) : state;
        state = second > 6.5 && second < 7.5 ? state.follow(FollowState.LOST) : state;
        state = second > 8 && second < 8.6 ? state.held(true) : state;
        return second > 11
                ? state.trouble(new Trouble(Trouble.Kind.NO_SOUND, "the microphone was unplugged"))
                : state.movedBy(Mover.VOICE);
    }
}
