package org.bookholder.follow;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.FollowEvent;
import org.bookholder.follow.model.Outcome;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.Hypothesis;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.testing.Prepared;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

/** Two lines are read without a pause, and the ears divide the utterance after the first one. */
final class DividedUtteranceTest {
    private static final String FIRST_LINE = "Turn the wheel slowly and watch the gap beside the brake";
    private static final String SECOND_LINE = "A spoke that rings low is loose and wants half a turn";

    /** How many words the first line has. */
    private static final int FIRST = 11;

    private static final double WORD_SECONDS = 0.4;

    private final Follower follower = new Follower(Prepared.of(Scripts.of(FIRST_LINE, SECOND_LINE)));
    private final List<FollowEvent> events = new ArrayList<>();
    private final List<RecognizedWord> words = new ArrayList<>();

    @Test
    void theDividedLineIsSettledAndThePositionStaysWhereTheVoiceIs() {
        readTo("and wants half");
        ReadingPosition before = position();
        assertThat(before.line()).isEqualTo(2);
        int told = events.size();
        divide(EarKind.OPEN);
        divide(EarKind.SCRIPT);
        assertThat(events.subList(told, events.size()))
                .noneMatch(FollowEvent.Moved.class::isInstance)
                .filteredOn(FollowEvent.AttemptSettled.class::isInstance)
                .extracting(e -> ((FollowEvent.AttemptSettled) e).attempt())
                .extracting(Attempt::line)
                .containsExactly(1);
    }

    @Test
    void aLineIsNotSettledBeforeTheOpenEarHasDividedBehindIt() {
        readTo("and wants half");
        divide(EarKind.SCRIPT);
        events.addAll(follower.hear(new Hypothesis.Final(
                EarKind.OPEN,
                now(),
                words.subList(0, FIRST - 3),
                words.get(FIRST - 4).end(),
                List.of())));
        assertThat(events).noneMatch(FollowEvent.AttemptSettled.class::isInstance);
    }

    @Test
    void theTakeEndsAsIfItHadNotBeenDivided() {
        readTo("and wants half");
        divide(EarKind.OPEN);
        divide(EarKind.SCRIPT);
        readTo("a turn");
        List<RecognizedWord> rest = words.subList(FIRST, words.size());
        follower.hear(new Hypothesis.Final(EarKind.OPEN, now(), rest));
        follower.hear(new Hypothesis.Final(EarKind.SCRIPT, now(), rest));
        List<FollowEvent> end = follower.endTake(now());
        FollowEvent.TakeSettled take = (FollowEvent.TakeSettled) end.get(end.size() - 1);
        assertThat(take.attempts()).extracting(Attempt::line).containsExactly(1, 2);
        assertThat(take.attempts()).extracting(Attempt::outcome).containsOnly(Outcome.CLEAN);
        assertThat(take.asides()).isEmpty();
    }

    /** Reads on, up to and with the last words of {@code text}. */
    private void readTo(String text) {
        String script = (FIRST_LINE + " " + SECOND_LINE).toLowerCase(Locale.ROOT);
        String read = script.substring(0, script.indexOf(text) + text.length());
        List<String> all = List.of(read.split(" ", -1));
        for (String word : all.subList(words.size(), all.size())) {
            StreamTime start = now();
            words.add(new RecognizedWord(word, start, start.plus(StreamTime.ofSeconds(WORD_SECONDS)), 1));
            List<String> heard = words.stream().map(RecognizedWord::text).toList();
            events.addAll(follower.hear(new Hypothesis.Partial(EarKind.OPEN, now(), heard)));
            events.addAll(follower.hear(new Hypothesis.Partial(EarKind.SCRIPT, now(), heard)));
        }
    }

    private void divide(EarKind ear) {
        List<String> next = words.subList(FIRST, words.size()).stream()
                .map(RecognizedWord::text)
                .toList();
        StreamTime end = words.get(FIRST - 1).end();
        events.addAll(follower.hear(new Hypothesis.Final(ear, now(), words.subList(0, FIRST), end, next)));
    }

    private StreamTime now() {
        return StreamTime.ofSeconds(words.size() * WORD_SECONDS);
    }

    private ReadingPosition position() {
        return events.stream()
                .filter(FollowEvent.Moved.class::isInstance)
                .map(e -> ((FollowEvent.Moved) e).position())
                .reduce((a, b) -> b)
                .orElseThrow();
    }
}
