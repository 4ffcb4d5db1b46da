package org.bookholder.speech.vosk;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

final class WordGapTest {
    private static final StreamTime FROM = at(2);
    private static final StreamTime TO = at(6);

    @Test
    void theWidestGapIsTakenIfNoneIsWide() {
        List<RecognizedWord> words = List.of(word(2, 3), word(3.03, 4), word(4.09, 5), word(5.06, 5.4));
        assertThat(WordGap.best(words, FROM, TO)).contains(new WordGap(2, at(4.045)));
    }

    @Test
    void ofWideGapsTheLastIsTaken() {
        List<RecognizedWord> words = List.of(word(2, 3), word(3.5, 4), word(4.12, 5), word(5.06, 5.4));
        assertThat(WordGap.best(words, FROM, TO)).contains(new WordGap(2, at(4.06)));
    }

    @Test
    void ofEqualGapsTheLastIsTaken() {
        List<RecognizedWord> words = List.of(word(2, 3), word(3, 4), word(4, 5), word(5, 6));
        assertThat(WordGap.best(words, FROM, TO)).contains(new WordGap(3, at(5)));
    }

    @Test
    void gapsTooFarBackOrTooNearTheEndAreNotTaken() {
        List<RecognizedWord> words = List.of(word(0, 1), word(1.5, 3), word(3, 4), word(4, 5.5), word(5.9, 6));
        assertThat(WordGap.best(words, FROM, TO)).contains(new WordGap(3, at(4)));
        assertThat(WordGap.best(words, at(4.5), TO)).isEmpty();
    }

    @Test
    void oneWordHasNoGap() {
        assertThat(WordGap.best(List.of(word(2, 6)), FROM, TO)).isEmpty();
        assertThat(WordGap.best(List.of(), FROM, TO)).isEmpty();
    }

    private static RecognizedWord word(double start, double end) {
        return new RecognizedWord("word", at(start), at(end), 1);
    }

    private static StreamTime at(double seconds) {
        return StreamTime.ofSeconds(seconds);
    }
}
