package org.bookholder.view.layout;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Where a row may end. Source of "at punctuation; not between article and noun, preposition and phrase, pronoun and verb, or
 * parts of a verb": BBC Subtitle Guidelines, 3.4.
 */
final class RowBreakRulesTest {
    @ParameterizedTest
    @CsvSource({
        "500, grams",
        "2, mm",
        "$12, million",
        "1/2, turn",
        "3½, cups",
        "1.5, bar",
        "26, in",
        "Mr., Brown",
        "step, 3",
        "No., 12",
        "lesson, 4"
    })
    void neverBreaksBetweenANumberAndItsUnitOrAWordAndItsNumber(String written, String next) {
        assertThat(RowBreakRules.bond(written, next)).isEqualTo(RowBreakRules.NEVER);
    }

    @ParameterizedTest
    @CsvSource({"the, rim", "a, spoke", "of, them", "with, silk", "we, bring", "can, be", "will, feel", "five, grams"})
    void rarelyBreaksBetweenWordsThatBelongTogether(String written, String next) {
        assertThat(RowBreakRules.bond(written, next)).isBetween(15.0, 100.0);
    }

    @ParameterizedTest
    @CsvSource({"2019., The", "no., It", "done!), Then", "“Stop.”, Then", "wait…, and", "page., Turn", "'true?\"', So"})
    void breaksBestAtTheEndOfASentenceEvenAfterANumber(String written, String next) {
        assertThat(RowBreakRules.bond(written, next)).isEqualTo(RowBreakRules.STOP);
    }

    @ParameterizedTest
    @CsvSource({"'500,', then", "'true,', and", "there:, begin", "wheel), and", "'“so,”', he"})
    void prefersTheEndOfAClause(String written, String next) {
        assertThat(RowBreakRules.bond(written, next)).isBetween(-20.0, -10.0);
    }

    @ParameterizedTest
    @CsvSource({"lesson, we", "$12, at", "32, of", "edge, to", "rim, and", "one, and"})
    void allowsABreakBeforeAPhrase(String written, String next) {
        assertThat(RowBreakRules.bond(written, next)).isLessThanOrEqualTo(0);
    }
}
