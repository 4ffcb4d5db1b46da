package org.bookholder.follow;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.FollowEvent;
import org.bookholder.follow.model.FollowState;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.follow.model.WordTime;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.timing.StreamTime;

/** Invariants of a follower's findings. The takes of a random reading follow each other without a gap. */
final class FollowInvariants implements FollowEvent.Listener {
    private final PreparedScript script;
    private int take = 1;
    private StreamTime start = StreamTime.ZERO;
    private FollowState state = FollowState.FOLLOWING;
    private boolean badly;

    private FollowInvariants(PreparedScript script) {
        this.script = script;
    }

    static void check(PreparedScript script, List<FollowEvent> events) {
        FollowInvariants invariants = new FollowInvariants(script);
        StreamTime now = StreamTime.ZERO;
        for (FollowEvent event : events) {
            assertThat(event.at()).isGreaterThanOrEqualTo(now);
            now = event.at();
            event.to(invariants);
        }
    }

    @Override
    public void moved(FollowEvent.Moved event) {
        ReadingPosition position = event.position();
        int lines = script.lines().size();
        assertThat(position.line()).isBetween(1, lines + 1);
        assertThat(position.word()).isBetween(1, position.line() > lines ? 1 : words(position.line()));
        assertThat(event.wordsRead()).isNotNegative();
    }

    @Override
    public void changed(FollowEvent.Changed event) {
        assertThat(event.state()).isNotEqualTo(state);
        state = event.state();
    }

    @Override
    public void attemptSettled(FollowEvent.AttemptSettled event) {
        check(event.attempt(), event.at());
    }

    @Override
    public void asidesHeard(FollowEvent.AsidesHeard event) {
        assertThat(event.take()).isEqualTo(take);
        assertThat(event.asides()).extracting(Aside::start).isSorted();
    }

    @Override
    public void takeSettled(FollowEvent.TakeSettled event) {
        assertThat(event.take()).isEqualTo(take);
        List<Attempt> attempts = event.attempts();
        attempts.forEach(attempt -> check(attempt, event.at()));
        assertThat(attempts)
                .extracting(Attempt::ordinal)
                .containsExactlyElementsOf(
                        IntStream.rangeClosed(1, attempts.size()).boxed().toList());
        assertThat(attempts).extracting(Attempt::start).isSorted();
        assertThat(event.asides()).extracting(Aside::start).isSorted();
        event.asides().forEach(aside -> {
            assertThat(aside.take()).isEqualTo(take);
            assertThat(aside.line()).isBetween(0, script.lines().size());
            assertLiesIn(aside.start(), aside.end(), start, event.at());
        });
        take++;
        start = event.at();
        state = FollowState.FOLLOWING;
    }

    @Override
    public void notJudged(FollowEvent.NotJudged event) {
        throw new AssertionError("the settler failed: " + event.log());
    }

    @Override
    public void understood(FollowEvent.Understood event) {
        assertThat(event.badly()).isNotEqualTo(badly);
        assertThat(event.share()).isBetween(0.0, 1.0);
        badly = event.badly();
    }

    private void check(Attempt attempt, StreamTime now) {
        assertThat(attempt.take()).isEqualTo(take);
        assertThat(attempt.ordinal()).isPositive();
        assertThat(attempt.line()).isBetween(1, script.lines().size());
        assertLiesIn(attempt.start(), attempt.end(), start, now);
        int words = words(attempt.line());
        assertThat(attempt.words()).extracting(WordTime::word).isSorted().doesNotHaveDuplicates();
        attempt.words().forEach(word -> {
            assertThat(word.word()).isBetween(1, words);
            assertLiesIn(word.start(), word.end(), start, now);
        });
        assertThat(attempt.deviations()).extracting(Deviation::word).isSorted();
        attempt.deviations().forEach(deviation -> {
            assertThat(deviation.word()).isBetween(1, words + 1);
            assertThat(deviation.certainty()).isBetween(0.0, 1.0);
        });
    }

    private static void assertLiesIn(StreamTime start, StreamTime end, StreamTime from, StreamTime to) {
        assertThat(start).isGreaterThanOrEqualTo(from).isLessThanOrEqualTo(end);
        assertThat(end).isLessThanOrEqualTo(to);
    }

    private int words(int line) {
        return script.lines().get(line - 1).size();
    }
}
