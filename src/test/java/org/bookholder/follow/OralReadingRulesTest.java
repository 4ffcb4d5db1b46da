package org.bookholder.follow;

import static org.assertj.core.api.Assertions.assertThat;

import org.bookholder.follow.judge.OneLine;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/**
 * What is an error in reading aloud: US Department of Education, "Accelerating Student Learning: Monitoring Reading"
 * (Warkomski), the source's own examples, and Maryland curriculum-based measurement (Speece). {@link RepairsTest} has
 * repairs.
 *
 * <p>Each example is read within a longer script, as it would be in a lesson.
 */
final class OralReadingRulesTest {
    @Test
    @DisplayName("rule 7: an omission is an error")
    void reportsAnOmittedWord() {
        assertThat(OneLine.deviations("Mario climbed the oak tree.", "mario climbed the tree"))
                .containsExactly("oak dropped");
    }

    @Test
    @DisplayName("rule 2: a self-correction is correct")
    void forgivesASelfCorrection() {
        assertThat(OneLine.deviations("The river was cold", "the river was could cold"))
                .isEmpty();
    }

    @Test
    @DisplayName("rule 1: another word in context is an error")
    void reportsASubstitution() {
        assertThat(OneLine.deviations("Mark saw an elephant.", "mark saw an anchor"))
                .containsExactly("elephant swapped");
    }

    @Test
    @DisplayName("Maryland CBM (Speece): a repetition is not an error")
    void forgivesARepetition() {
        assertThat(OneLine.deviations("Mario climbed the oak tree.", "mario climbed the climbed the oak tree"))
                .isEmpty();
    }

    @Test
    @DisplayName("rule 9: each of two transposed words is an error")
    void reportsTransposedWords() {
        assertThat(OneLine.deviations("Charlie ran quickly.", "charlie quickly ran"))
                .isNotEmpty();
    }

    @Test
    @DisplayName("rule 8: a word that does not come is an error, and the one error")
    void reportsAWordThatIsNotSaid() {
        assertThat(OneLine.deviations("Mark saw an elephant.", "mark saw an | |"))
                .containsExactly("elephant dropped");
    }

    @Test
    @DisplayName("Maryland CBM (Speece): a skipped line is an error in each of its words, so it has no attempt")
    void aSkippedLineHasNoAttempt() {
        assertThat(OneLine.read("Mario climbed the oak tree.", "")).isEmpty();
    }
}
