package org.bookholder.view.layout;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class ShownTextTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "it's|it’s",
                "don't,|don’t,",
                "'no'|‘no’",
                "\"Stop\"|“Stop”",
                "(\"now\")|(“now”)",
                "riders'|riders’",
                "'em|’em",
                "'90s|’90s",
                "5'6\"|5'6\"",
                "“so”|“so”"
            })
    void straightQuotesBecomeCurly(String written, String shown) {
        assertThat(ShownText.of(written, true)).isEqualTo(new ShownText(shown, ""));
    }

    @Test
    void anotherLanguageKeepsTheQuotesThatItsAuthorWrote() {
        assertThat(ShownText.of("\"halt\"", false).text()).isEqualTo("\"halt\"");
    }

    @ParameterizedTest
    @CsvSource({
        "wait ..., wait, …",
        "wait..., wait, …",
        "wait…, wait, …",
        "wheel —, wheel, —",
        "wheel -, wheel, —",
        "wheel –, wheel, —",
        "wheel—, wheel, —"
    })
    void aPauseIsSeparate(String written, String word, String mark) {
        assertThat(ShownText.of(written, true)).isEqualTo(new ShownText(word, mark));
    }

    @ParameterizedTest
    @CsvSource({"half-way", "now.", "well-", "-"})
    void otherDotsAndDashesStayAsTheyAre(String written) {
        assertThat(ShownText.of(written, true)).isEqualTo(new ShownText(written, ""));
    }
}
