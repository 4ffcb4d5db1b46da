package org.bookholder.follow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import org.assertj.core.groups.Tuple;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.FollowEvent;
import org.bookholder.follow.model.Outcome;
import org.bookholder.script.model.Script;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.Hypothesis;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.testing.ReadAloud;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

/** A line that the reader breaks off is settled in the pause after it; nothing has to follow. */
final class BrokenOffLineTest {
    private static final Script LESSON = Scripts.of(
            "Turn the wheel slowly and watch the gap beside the brake",
            "A spoke that rings low is loose and wants half a turn",
            "Count the threads before you tighten anything near the valve");

    private static final String BEGUN = "turn the wheel slowly and watch";

    /** When the last word of {@link #BEGUN} ends: half a second of room, then three words a second. */
    private static final double BROKEN_OFF = 0.5 + 6 / 3.0;

    private final ReadAloud reader = ReadAloud.of(LESSON);

    @Test
    void isSettledInThePause() {
        reader.say(BEGUN).quiet(3);
        assertThat(settled()).singleElement().satisfies(event -> {
            assertThat(event.at().seconds()).isBetween(BROKEN_OFF + 3, BROKEN_OFF + 3.2);
            assertThat(event.attempt().line()).isEqualTo(1);
            assertThat(event.attempt().outcome()).isEqualTo(Outcome.INCOMPLETE);
            assertThat(event.attempt().end().seconds()).isEqualTo(BROKEN_OFF);
        });
    }

    @Test
    void isNotSettledInAShortPause() {
        reader.say(BEGUN).quiet(1.8);
        assertThat(settled()).isEmpty();
        reader.say("the gap beside the brake");
        assertThat(attempts()).containsExactly(tuple(1, 1, Outcome.CLEAN));
    }

    @Test
    void isToldOnceHoweverLongThePauseIs() {
        reader.say(BEGUN).quiet(60);
        assertThat(settled()).hasSize(1);
    }

    @Test
    void isTheSameAttemptIfTheReaderGoesOn() {
        reader.say(BEGUN).quiet(5).say("the gap beside the brake");
        assertThat(attempts()).containsExactly(tuple(1, 1, Outcome.INCOMPLETE), tuple(1, 1, Outcome.CLEAN));
        assertThat(reader.cut().attempts()).extracting(Attempt::outcome).containsExactly(Outcome.CLEAN);
    }

    @Test
    void isAnAttemptOfItsOwnIfTheReaderStartsAgain() {
        reader.say(BEGUN).quiet(5).say("turn the wheel slowly and watch the gap beside the brake");
        assertThat(attempts())
                .containsSubsequence(tuple(1, 1, Outcome.INCOMPLETE), tuple(2, 1, Outcome.CLEAN))
                .doesNotContain(tuple(1, 1, Outcome.CLEAN));
    }

    @Test
    void isSettledThoughAnAsideFollowedIt() {
        reader.say(BEGUN).say("sorry somebody").quiet(4);
        assertThat(attempts()).containsExactly(tuple(1, 1, Outcome.INCOMPLETE));
    }

    @Test
    void isNotSettledWhileWordsAreBeingSaid() {
        reader.say(BEGUN);
        reader.follower().hear(new Hypothesis.Partial(EarKind.SCRIPT, reader.now(), List.of("the", "gap")));
        reader.quiet(5);
        assertThat(settled()).isEmpty();
    }

    @Test
    void isNotSettledWhileWordsAreSaidAfterADividedUtterance() {
        reader.say(BEGUN);
        StreamTime end = StreamTime.ofSeconds(BROKEN_OFF);
        reader.follower().hear(new Hypothesis.Final(EarKind.SCRIPT, reader.now(), List.of(), end, List.of("the")));
        reader.quiet(5);
        assertThat(settled()).isEmpty();
    }

    @Test
    void isSettledWhileSpeechIsIgnored() {
        reader.say(BEGUN);
        reader.follower().hold(reader.now());
        reader.follower().hear(new Hypothesis.Partial(EarKind.SCRIPT, reader.now(), List.of("the", "gap")));
        reader.quiet(4);
        assertThat(attempts()).containsExactly(tuple(1, 1, Outcome.INCOMPLETE));
    }

    @Test
    void isSettledOnceTheOpenEarHasHeardItToo() {
        StreamTime said = StreamTime.ofSeconds(0.5);
        List<RecognizedWord> words = List.of(word("turn", 0), word("the", 1), word("wheel", 2), word("slowly", 3));
        reader.follower().hear(new Hypothesis.Final(EarKind.SCRIPT, said.plus(StreamTime.ofSeconds(4)), words));
        reader.quiet(10);
        assertThat(settled()).isEmpty();
        reader.follower().hear(new Hypothesis.Final(EarKind.OPEN, reader.now(), words));
        reader.quiet(0.1);
        assertThat(attempts()).containsExactly(tuple(1, 1, Outcome.INCOMPLETE));
    }

    private static RecognizedWord word(String text, int second) {
        return new RecognizedWord(text, StreamTime.ofSeconds(second), StreamTime.ofSeconds(second + 0.5), 1);
    }

    @Test
    void aWordOrTwoBesideTheScriptAreNoAttempt() {
        reader.say("sorry what").quiet(10);
        assertThat(settled()).isEmpty();
    }

    private List<FollowEvent.AttemptSettled> settled() {
        return reader.events().stream()
                .filter(FollowEvent.AttemptSettled.class::isInstance)
                .map(FollowEvent.AttemptSettled.class::cast)
                .toList();
    }

    /** Ordinal, line and outcome of each attempt as it was told. */
    private List<Tuple> attempts() {
        return settled().stream()
                .map(FollowEvent.AttemptSettled::attempt)
                .map(attempt -> tuple(attempt.ordinal(), attempt.line(), attempt.outcome()))
                .toList();
    }
}
