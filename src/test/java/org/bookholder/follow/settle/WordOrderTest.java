package org.bookholder.follow.settle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.s;
import static org.bookholder.testing.Readings.word;

import java.util.Arrays;
import java.util.List;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.Hypothesis;
import org.bookholder.speech.RecognizedWord;
import org.junit.jupiter.api.Test;

/** Times of words as an ear may report them, for a take that begins at 10 s. */
final class WordOrderTest {
    private final WordOrder order = new WordOrder(s(10));

    @Test
    void wordsInOrderStayAsTheyAre() {
        RecognizedWord first = word("turn", 11, 12);
        RecognizedWord second = word("the", 12, 12.5);
        List<RecognizedWord> words = ordered(13, first, second);
        assertThat(words).hasSize(2);
        assertThat(words.get(0)).isSameAs(first);
        assertThat(words.get(1)).isSameAs(second);
    }

    @Test
    void noWordBeginsBeforeTheTake() {
        assertThat(ordered(13, word("turn", 9, 12))).containsExactly(word("turn", 10, 12));
        assertThat(ordered(14, word("the", 8, 9))).containsExactly(word("the", 10, 12));
    }

    @Test
    void noWordBeginsOrEndsBeforeTheOneBeforeIt() {
        assertThat(ordered(20, word("turn", 11, 13), word("the", 10.5, 12), word("wheel", 14, 15)))
                .containsExactly(word("turn", 11, 13), word("the", 11, 13), word("wheel", 14, 15));
    }

    @Test
    void noWordEndsAfterTheSoundHeardSoFar() {
        assertThat(ordered(12, word("turn", 11, 13), word("the", 14, 15)))
                .containsExactly(word("turn", 11, 12), word("the", 12, 12));
        assertThat(ordered(11, word("wheel", 11, 11.5)))
                .as("a report of less sound than before moves nothing back")
                .containsExactly(word("wheel", 12, 12));
    }

    @Test
    void theTextAndTheConfidenceOfAMovedWordStay() {
        assertThat(ordered(20, new RecognizedWord("turn", s(9), s(11), 0.5)))
                .containsExactly(new RecognizedWord("turn", s(10), s(11), 0.5));
    }

    private List<RecognizedWord> ordered(double heardTo, RecognizedWord... words) {
        return order.of(new Hypothesis.Final(EarKind.OPEN, s(heardTo), Arrays.asList(words)));
    }
}
