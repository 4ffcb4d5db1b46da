package org.bookholder.follow.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class TextSimilarityTest {
    /** Levenshtein's distance, the usual textbook pairs (from memory). */
    @ParameterizedTest
    @CsvSource({"kitten,sitting,3", "flaw,lawn,2", "saturday,sunday,3", "same,same,0"})
    void countsEdits(String a, String b, int distance) {
        assertThat(TextSimilarity.distance(a, b)).isEqualTo(distance);
    }

    @ParameterizedTest
    @CsvSource({"truing,truingly,true", "lake,oak,false"})
    void wordsThatDifferInAFewLettersAreSimilar(String a, String b, boolean same) {
        assertThat(TextSimilarity.same(a, b)).isEqualTo(same);
    }
}
