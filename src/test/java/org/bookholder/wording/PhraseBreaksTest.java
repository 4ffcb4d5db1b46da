package org.bookholder.wording;

import static org.assertj.core.api.Assertions.assertThat;

import org.bookholder.wording.PhraseBreaks.Place;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Cases after the BBC Subtitle Guidelines, "line breaks". */
final class PhraseBreaksTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "done. | Then | SENTENCE_END",
                "flour, | and | CLAUSE_END",
                "dough | and | BEFORE_PHRASE",
                "wet | dough | BETWEEN_WORDS",
                "could | rise | AFTER_CONJUNCTION",
                "don\u2019t | add | AFTER_CONJUNCTION",
                "into | the | AFTER_PREPOSITION",
                "twelve | frames | AFTER_COUNT",
                "the | bowl | AFTER_ARTICLE",
                "(the | bowl | AFTER_ARTICLE",
                "500 | grams | INSEPARABLE",
                "500 | and, | BEFORE_PHRASE",
                "Dr. | Moore | INSEPARABLE",
                "(Dr. | Moore | INSEPARABLE",
                "Gen. | Moore | INSEPARABLE",
                "J. | Moore | INSEPARABLE",
                "e.g. | the | INSEPARABLE",
                "Jan. | 5, | INSEPARABLE",
                "p. | 4 | INSEPARABLE",
                "etc. | and | BEFORE_PHRASE",
                "am I. | Then | SENTENCE_END",
                "step | 4 | INSEPARABLE",
            })
    void ratesThePlaceBetweenTwoWords(String before, String after, Place place) {
        assertThat(PhraseBreaks.between(before, after)).isEqualTo(place);
    }

    @ParameterizedTest
    @CsvSource({"the, true", "because, true", "under, true", "they, true", "dough, false", "'', false"})
    void knowsWhatBelongsToTheNextWord(String word, boolean leads) {
        assertThat(PhraseBreaks.leads(word)).isEqualTo(leads);
    }
}
