package org.bookholder.follow;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class LikenessTest {
    /** Levenshtein's distance, the usual textbook pairs (from memory). */
    @ParameterizedTest
    @CsvSource({"kitten,sitting,3", "flaw,lawn,2", "saturday,sunday,3", "same,same,0"})
    void countsEdits(String a, String b, int distance) {
        assertThat(Likeness.distance(a, b)).isEqualTo(distance);
    }

    @Test
    void findsAWordThatWasWrittenAsTwo() {
        assertThat(Likeness.contains(List.of("the", "roof", "top", "garden"), List.of("rooftop")))
                .isTrue();
    }

    @Test
    void doesNotFindAnotherWord() {
        assertThat(Likeness.contains(List.of("the", "lake"), List.of("oak"))).isFalse();
    }
}
