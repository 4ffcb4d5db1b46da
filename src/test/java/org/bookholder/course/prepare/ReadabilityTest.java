package org.bookholder.course.prepare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.bookholder.problem.ProblemException;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class ReadabilityTest {
    /** The formulas as published (US Department of Veterans Affairs, HSR&D), worked out by hand. */
    @ParameterizedTest
    @CsvSource({
        "13, 1, 24, 37.455, 11.265",
        "6, 1, 6, 116.145, -1.450",
        "9, 1, 11, 94.300, 2.342",
        "100, 8, 150, 67.248, 6.985",
        "200, 10, 280, 68.095, 8.730"
    })
    void followsThePublishedFormulas(int words, int sentences, int syllables, double ease, double grade) {
        Readability readability = new Readability(words, sentences, syllables);
        assertThat(readability.ease()).isCloseTo(ease, within(0.0005));
        assertThat(readability.grade()).isCloseTo(grade, within(0.0005));
    }

    /** The first sentence is the one commonly printed with grade 11.3. */
    @Test
    void countsWordsSentencesAndSyllables() throws ProblemException {
        assertThat(of("The Australian platypus is seemingly a hybrid of a mammal and reptilian creature."))
                .isEqualTo(new Readability(13, 1, 24));
        assertThat(of("The cat sat on the mat.")).isEqualTo(new Readability(6, 1, 6));
        assertThat(of("The quick brown fox jumps over the lazy dog.")).isEqualTo(new Readability(9, 1, 11));
    }

    @Test
    void countsNumbersAsTheyAreSpoken() throws ProblemException {
        assertThat(of("Buy 32 spokes.")).isEqualTo(new Readability(4, 1, 5));
    }

    @Test
    void aSentenceMayGoOverSeveralLines() throws ProblemException {
        assertThat(of("Turn the wheel\nand listen. Then stop.\n\nNo stop here").sentences())
                .isEqualTo(3);
        assertThat(of("---\nlines: as-written\n---\nTurn it. Listen.\n").sentences())
                .isEqualTo(2);
    }

    private static Readability of(String text) throws ProblemException {
        return Readability.of(ScriptReader.parse(text, "l.md", Format.MARKDOWN));
    }
}
