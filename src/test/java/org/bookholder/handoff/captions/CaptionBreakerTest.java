package org.bookholder.handoff.captions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.s;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Where captions and rows are broken; a row holds 42 characters, a caption two rows and seven seconds. */
final class CaptionBreakerTest {
    private final CaptionBreaker breaker = new CaptionBreaker(CaptionRules.standard());

    @Test
    void aLineThatFitsIsOneCaptionInOneRow() {
        List<TimedWord> words = said(0.3, "Every wheel begins with its hub and rim.");
        assertThat(captions(words)).containsExactly("Every wheel begins with its hub and rim.");
        assertThat(breaker.rows(words)).containsExactly("Every wheel begins with its hub and rim.");
    }

    @ParameterizedTest
    @CsvSource({"42, 1", "43, 2"})
    void aRowIsFilledToItsLastCharacter(int characters, int rows) {
        String text = "four ".repeat(7) + "x".repeat(characters - 35);
        assertThat(breaker.rows(said(0.3, text))).hasSize(rows);
        assertThat(String.join(" ", breaker.rows(said(0.3, text)))).isEqualTo(text);
    }

    @Test
    void rowsAreBrokenBetweenPhrasesAndAboutInTheMiddle() {
        assertThat(breaker.rows(said(0.3, "Tighten four of the nipples by half a turn and wait a moment.")))
                .containsExactly("Tighten four of the nipples", "by half a turn and wait a moment.");
        assertThat(breaker.rows(said(0.3, "spoke spoke spoke spoke spoke spoke spoke spoke spoke spoke")))
                .containsExactly("spoke spoke spoke spoke spoke", "spoke spoke spoke spoke spoke");
    }

    /** BBC Subtitle Guidelines, "line breaks": a name is not parted from its title. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "The wheel is trued by the famous and dear Dr. Moore of the old school.",
                "It was made in the workshop that belonged to Prof. Adams and her two sons.",
                "Nobody builds a wheel like this any more, vs. the ones that we had then."
            })
    void aRowNeverEndsWithAnAbbreviationThatBelongsToTheNextWord(String text) {
        assertThat(breaker.rows(said(0.3, text)).get(0)).doesNotEndWith(".");
    }

    @Test
    void aWordThatIsLongerThanARowStandsAlone() {
        String word = "w".repeat(50);
        assertThat(breaker.rows(said(0.3, word))).containsExactly(word);
        assertThat(captions(said(0.3, "See " + word + " there."))).containsExactly("See", word, "there.");
    }

    @Test
    void aPauseOfTheVoiceIsABreakAtNoCost() {
        String text =
                "Look along the rim with one eye closed until you see where it leaves the straight line by a hair.";
        List<TimedWord> even = said(0.3, text);
        int at = 12;
        List<TimedWord> paused = new ArrayList<>(even.subList(0, at));
        even.subList(at, even.size())
                .forEach(word -> paused.add(new TimedWord(
                        word.text(), word.start().plus(s(0.35)), word.end().plus(s(0.35)))));
        assertThat(captions(paused)).hasSize(2).first().isEqualTo(join(even.subList(0, at)));
        assertThat(captions(even)).first().isNotEqualTo(join(even.subList(0, at)));
    }

    @Test
    void noCaptionLastsLongerThanSevenSeconds() {
        List<TimedWord> slow = said(1, "one then two then three then four then five then six");
        assertThat(breaker.captions(slow, Optional.empty()))
                .hasSizeGreaterThan(1)
                .allSatisfy(caption -> assertThat(caption.size()).isLessThanOrEqualTo(7));
    }

    @Test
    void oneOrTwoWordsAreNotLeftOver() {
        for (int count = 14; count < 40; count++) {
            List<TimedWord> words = said(0.3, "spoke ".repeat(count).trim());
            assertThat(breaker.captions(words, Optional.empty()))
                    .as("%d words", count)
                    .allSatisfy(caption -> assertThat(caption.size()).isGreaterThan(2));
        }
    }

    @Test
    void captionsAreAboutEquallyFull() {
        List<List<TimedWord>> captions =
                breaker.captions(said(0.4, "spoke ".repeat(20).trim()), Optional.empty());
        assertThat(captions).extracting(List::size).containsExactly(10, 10);
    }

    private List<String> captions(List<TimedWord> words) {
        return breaker.captions(words, Optional.empty()).stream()
                .map(CaptionBreakerTest::join)
                .toList();
    }

    private static String join(List<TimedWord> words) {
        return String.join(" ", words.stream().map(TimedWord::text).toList());
    }

    /** Each word takes as long, without a pause. */
    private static List<TimedWord> said(double seconds, String text) {
        List<TimedWord> words = new ArrayList<>();
        for (String word : text.split(" ", -1)) {
            double start = words.size() * seconds;
            words.add(new TimedWord(word, s(start), s(start + seconds)));
        }
        return words;
    }
}
