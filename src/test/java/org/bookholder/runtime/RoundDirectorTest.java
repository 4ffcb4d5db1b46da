package org.bookholder.runtime;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.runtime.record.JournalQueue;
import org.bookholder.runtime.record.SessionRecorder;
import org.bookholder.session.Mover;
import org.bookholder.session.PickupRound;
import org.bookholder.session.Remark;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.TakeEnd;
import org.bookholder.testing.FakeClock;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

/** The pickup round in virtual time, on a lesson of which lines 3 and 7 are to be picked up. */
final class RoundDirectorTest {
    private final FakeClock clock = new FakeClock();
    private final SessionRecorder recorder =
            new SessionRecorder(new JournalQueue(), Session.begin(Scripts.sized(100, 8, 6), FatigueLimits.defaults()));
    private final Controls takes = new Controls();
    private RoundDirector round = new RoundDirector(recorder, takes, clock);
    private int attempts;

    RoundDirectorTest() {
        roll(new ReadingPosition(8, 1));
        for (int line = 1; line <= 8; line++) {
            readClean(line);
        }
        recorder.enter(new SessionEvent.PickupMarked(recorder.state().now(), 3, ""));
        recorder.enter(new SessionEvent.PickupMarked(recorder.state().now(), 7, ""));
    }

    @Test
    void beginsWithTheFirstPickupAndTheLineBeforeItToLeadIn() {
        assertThat(round.begin()).isTrue();
        assertThat(takes.done).containsExactly("resume", "go to 2");
        assertThat(state().line()).isEqualTo(3);
        assertThat(state().leadIn()).isEqualTo(2);
    }

    @Test
    void goesFromCleanLineToCleanLineUntilNoneIsLeft() {
        round.begin();
        readClean(3);
        pass(0.1);
        assertThat(state().ticked()).isEqualTo(3);
        pass(RoundDirector.TICK_SECONDS);
        assertThat(state()).isEqualTo(new PickupRound(PickupRound.Step.READING, 7, 1, 1, ""));
        readClean(7);
        pass(0.1);
        pass(RoundDirector.TICK_SECONDS);
        assertThat(state().isOn()).isFalse();
        assertThat(takes.done).endsWith("go to 6", "cut");
    }

    @Test
    void aLineMisreadAgainComesOnceMoreAndSaysWhy() {
        round.begin();
        settle(3, List.of(new Deviation(2, "take", "make", Deviation.Kind.SWAPPED, 1)));
        pass(0.1);
        assertThat(state().step()).isEqualTo(PickupRound.Step.AGAIN);
        assertThat(state().why()).contains("make");
        pass(RoundDirector.AGAIN_SECONDS);
        assertThat(state()).isEqualTo(new PickupRound(PickupRound.Step.READING, 3, 2, 0, ""));
        assertThat(takes.done).endsWith("resume", "go to 2");
    }

    @Test
    void aLineReadToItsEndIsCutSoThatBothEarsAgreeOnIt() {
        round.begin();
        move(4);
        pass(0.1);
        pass(RoundDirector.OVER_SECONDS);
        assertThat(state().step()).isEqualTo(PickupRound.Step.LISTENING);
        assertThat(takes.done).endsWith("cut");
        end();
        readClean(3);
        pass(0.1);
        pass(RoundDirector.TICK_SECONDS);
        assertThat(takes.done).endsWith("take from 6");
    }

    @Test
    void aLineThatNobodyHeardComesOnceMore() {
        round.begin();
        move(4);
        pass(0.1);
        pass(RoundDirector.OVER_SECONDS);
        end();
        pass(RoundDirector.PATIENCE_SECONDS);
        assertThat(state().why()).isEqualTo("not heard");
    }

    @Test
    void aLineCanBeLeftAndBroughtOnceMore() {
        round.begin();
        round.leave();
        assertThat(state().line()).isEqualTo(7);
        round.again();
        assertThat(state().line()).isEqualTo(7);
        round.leave();
        assertThat(state().line()).isEqualTo(3);
    }

    @Test
    void leavingTheOnlyLineEndsTheRound() {
        readClean(7);
        round.begin();
        round.leave();
        assertThat(state().isOn()).isFalse();
    }

    @Test
    void withoutARollingTakeItRollsTheNext() {
        end();
        round.begin();
        assertThat(takes.done).containsExactly("take from 2");
    }

    /** A take that was just cut takes no more commands: the line comes in the take after it. */
    @Test
    void whileATakeIsEndingTheLineComesInTheNextOne() {
        round.begin();
        move(4);
        pass(0.1);
        pass(RoundDirector.OVER_SECONDS);
        round.leave();
        assertThat(takes.done).endsWith("cut", "take from 6");
    }

    @Test
    void theFirstLineOfAScriptHasNothingToLeadIn() {
        recorder.enter(new SessionEvent.PickupMarked(recorder.state().now(), 1, ""));
        round.begin();
        assertThat(takes.done).endsWith("go to 1");
        assertThat(state().leadIn()).isZero();
    }

    @Test
    void withNothingToPickUpThereIsNoRound() {
        readClean(3);
        readClean(7);
        assertThat(round.begin()).isFalse();
        assertThat(takes.done).isEmpty();
    }

    @Test
    void duringABreakItWaits() {
        round.begin();
        settle(3, List.of(new Deviation(2, "take", "make", Deviation.Kind.SWAPPED, 1)));
        pass(0.1);
        end();
        recorder.enter(new SessionEvent.Remarked(recorder.state().now(), new Remark.BreakBegan(Instant.EPOCH)));
        pass(RoundDirector.AGAIN_SECONDS);
        assertThat(takes.rolling()).isFalse();
        recorder.enter(new SessionEvent.Remarked(recorder.state().now(), new Remark.BreakOver(Instant.EPOCH)));
        pass(0.1);
        assertThat(takes.done).endsWith("take from 2");
    }

    /** The break has cut the take in which the line was being read. */
    @Test
    void afterABreakTheLineThatWasBeingReadComesAgain() {
        round.begin();
        end();
        recorder.enter(new SessionEvent.Remarked(recorder.state().now(), new Remark.BreakBegan(Instant.EPOCH)));
        pass(60);
        recorder.enter(new SessionEvent.Remarked(recorder.state().now(), new Remark.BreakOver(Instant.EPOCH)));
        round.breakOver();
        assertThat(state().line()).isEqualTo(3);
        assertThat(takes.done).endsWith("take from 2");
    }

    @Test
    void aBreakDuringWhichATakeWasBegunDisturbsNobody() {
        round.begin();
        int before = takes.done.size();
        round.breakOver();
        assertThat(takes.done).hasSize(before);
    }

    @Test
    void afterAKillTheSameLineComes() {
        round.begin();
        round.leave();
        end();
        round = new RoundDirector(recorder, takes, clock);
        assertThat(round.goOn()).isTrue();
        assertThat(state().line()).isEqualTo(7);
        assertThat(takes.done).endsWith("take from 6");
    }

    /** What was read before the kill is heard again first, and may have been clean. */
    @Test
    void afterAKillALineThatWasCleanIsPassed() {
        round.begin();
        end();
        readClean(3);
        round = new RoundDirector(recorder, takes, clock);
        assertThat(round.goOn()).isTrue();
        assertThat(state().line()).isEqualTo(7);
    }

    @Test
    void afterAKillWithNothingLeftTheRoundIsOver() {
        round.begin();
        end();
        readClean(3);
        readClean(7);
        round = new RoundDirector(recorder, takes, clock);
        assertThat(round.goOn()).isFalse();
        assertThat(state().isOn()).isFalse();
    }

    private PickupRound state() {
        return recorder.state().round();
    }

    private void pass(double seconds) {
        clock.passMillis((int) Math.ceil(1000 * seconds));
        round.advance();
    }

    private void move(int line) {
        recorder.enter(
                new SessionEvent.PositionMoved(recorder.state().now(), new ReadingPosition(line, 1), Mover.VOICE, 5));
    }

    private void readClean(int line) {
        settle(line, List.of());
    }

    private void settle(int line, List<Deviation> deviations) {
        StreamTime start = recorder.state().now().plus(StreamTime.ofSeconds(1));
        StreamTime end = start.plus(StreamTime.ofSeconds(2));
        recorder.enter(new SessionEvent.AttemptSettled(
                end,
                new Attempt(
                        recorder.state().takes().count(), ++attempts, line, start, end, true, List.of(), deviations)));
    }

    private void roll(ReadingPosition from) {
        int number = recorder.state().takes().count() + 1;
        recorder.enter(new SessionEvent.TakeStarted(recorder.state().now(), number, Instant.EPOCH, "", from));
    }

    private void end() {
        takes.ending = false;
        recorder.enter(new SessionEvent.TakeEnded(
                recorder.state().now(), recorder.state().takes().count(), Instant.EPOCH, TakeEnd.CUT));
    }

    /** Carries out at once what is asked, and writes it down. */
    private final class Controls implements TakeControls {
        private final List<String> done = new ArrayList<>();
        private boolean ending;

        @Override
        public boolean rolling() {
            return recorder.state().takes().rolling();
        }

        @Override
        public boolean ending() {
            return rolling() && ending;
        }

        @Override
        public void hold() {
            done.add("hold");
        }

        @Override
        public void resume() {
            done.add("resume");
        }

        @Override
        public void goTo(ReadingPosition position, Mover mover) {
            done.add("go to " + position.line());
            recorder.enter(new SessionEvent.PositionMoved(recorder.state().now(), position, mover, 0));
        }

        @Override
        public boolean next(ReadingPosition from) {
            done.add("take from " + from.line());
            if (!rolling()) {
                roll(from);
            }
            return rolling();
        }

        @Override
        public boolean cut() {
            done.add("cut");
            ending = rolling();
            return ending;
        }
    }
}
