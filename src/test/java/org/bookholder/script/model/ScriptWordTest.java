package org.bookholder.script.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.bookholder.script.model.ScriptWord.Emphasis;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class ScriptWordTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "“Hello,” | Hello",
                "stay. | stay",
                "U.S. | U.S.",
                "(U.S.) | U.S.",
                "e.g., | e.g.",
                "C++, | C++",
                "¿qué? | qué",
                "20%. | 20%",
                "($2.5 million) | $2.5 million",
                "5 p.m. | 5 p.m.",
                "drives — | drives",
                "don’t! | don’t",
                "-5°, | -5°",
                "–5 | –5",
                "• a hive | a hive",
            })
    void isPlainWithoutThePunctuationAroundIt(String written, String plain) {
        assertThat(new ScriptWord(written, List.of(List.of("x")), Emphasis.NONE).plain())
                .isEqualTo(plain);
    }
}
