package org.bookholder.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.follow.model.UnjudgedStretch;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.StreamTime;
import org.bookholder.wording.LinesText;
import org.junit.jupiter.api.Test;

/** Read, skipped and not reached are three things. */
final class LineCountsTest {
    private SessionState state = Session.apply(
            Session.begin(Scripts.sized(100, 6, 5), FatigueLimits.defaults()),
            new SessionEvent.TakeStarted(StreamTime.ZERO, 1, Instant.EPOCH, "", ReadingPosition.START));

    @Test
    void beforeTheReadingNothingIsReached() {
        assertThat(counts()).isEqualTo(new LineCounts(0, 0, 6));
        assertThat(LinesText.of(counts())).isEqualTo("0 of 6 lines read, 6 not reached");
    }

    @Test
    void aLineThatTheVoiceJumpedOverIsSkippedAndNotRead() {
        settle(1, true);
        settle(2, true);
        move(4);
        settle(4, true);
        assertThat(counts()).isEqualTo(new LineCounts(3, 1, 2));
        assertThat(LinesText.of(counts())).isEqualTo("3 of 6 lines read, 1 skipped, 2 not reached");
    }

    @Test
    void aLineThatWasBrokenOffOrNotJudgedIsReadAllTheSame() {
        settle(1, false);
        state = Session.apply(
                state,
                new SessionEvent.NotJudged(
                        state.now(), new UnjudgedStretch(1, StreamTime.ZERO, state.now(), List.of(2)), ""));
        assertThat(counts().read()).isEqualTo(2);
        assertThat(counts().skipped()).isZero();
    }

    @Test
    void onlyATakeInWhichSomethingWasReadTellsWhereTheReadingBegan() {
        begin(2, 5);
        settle(2, 5, true);
        assertThat(counts()).isEqualTo(new LineCounts(1, 0, 5));
        begin(3, 2);
        assertThat(counts()).as("begun earlier, nothing read yet").isEqualTo(new LineCounts(1, 0, 5));
        begin(4, 6);
        settle(4, 6, true);
        assertThat(counts()).as("and given up").isEqualTo(new LineCounts(2, 0, 4));
        begin(5, 2);
        settle(5, 2, true);
        assertThat(counts()).as("lines 3 and 4 lie between what was read").isEqualTo(new LineCounts(3, 2, 1));
    }

    private LineCounts counts() {
        return LineCounts.of(state.lines().all());
    }

    private void move(int line) {
        state = Session.apply(
                state, new SessionEvent.PositionMoved(state.now(), new ReadingPosition(line, 1), Mover.VOICE, 0));
    }

    private void begin(int take, int line) {
        state = Session.apply(
                state,
                new SessionEvent.TakeStarted(state.now(), take, Instant.EPOCH, "", new ReadingPosition(line, 1)));
    }

    private void settle(int line, boolean complete) {
        settle(1, line, complete);
    }

    private void settle(int take, int line, boolean complete) {
        StreamTime start = state.now();
        StreamTime end = start.plus(StreamTime.ofSeconds(2));
        state = Session.apply(
                state,
                List.of(
                        new SessionEvent.PositionMoved(end, new ReadingPosition(line + 1, 1), Mover.VOICE, 5),
                        new SessionEvent.AttemptSettled(
                                end, new Attempt(take, line, line, start, end, complete, List.of(), List.of()))));
    }
}
