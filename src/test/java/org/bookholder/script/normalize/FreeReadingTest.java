package org.bookholder.script.normalize;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What counts as another reading of the same figures. From memory. */
final class FreeReadingTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "085° | oh eight five",
                "085° | eighty five degrees",
                "1,250 | twelve fifty",
                "$1,250.00 | a thousand two hundred and fifty bucks",
                "$4.05 | four dollars and five cents",
                "#00417 | oh oh four one seven",
                "0640 | six forty",
                "50/34 | fifty by thirty four",
                "50°42′N | fifty degrees forty two minutes north",
                "10/14 | ten on fourteen",
                "K2, | knit two",
                "!= 5 | is not five",
                "0800 | oh eight double oh",
                "-5° | minus five",
                "12,570 | twelve thousand five hundred and seventy",
                "SW | southwest",
                "FG. | final gravity",
                "hdlr. | handler",
                "2.5 | two and a half",
                "3² | three squared",
            })
    void theSameFiguresSaidInAnotherWayAreUnderstood(String written, String said) {
        assertThat(isReading(written, said)).isTrue();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "085° | ninety five degrees",
                "1,250 | twelve fifteen",
                "205 | twenty five",
                "-5° | five degrees",
                "2.5 | twenty five",
                "16GB | sixty gigabyte",
                "500mg | five hundred micrograms",
                "$67 | sixty seven pounds",
                "$0.67 | sixty seven dollars",
                "179(a) | one seventy nine b",
                "3(b) | three",
                "A# | a",
                "3² | three",
                "!= 0 | equals zero",
                "22G | twenty two gram",
                "NOT | nothing",
                "ten | tension",
                "5 | five very big",
            })
    void anotherValueIsNot(String written, String said) {
        assertThat(isReading(written, said)).isFalse();
    }

    @Test
    void aReadingMayStandAmongOtherWords() {
        List<String> said = List.of("set", "twelve", "fifty", "now");
        assertThat(FreeReading.ends("1,250", said, 1)).containsExactly(3);
        assertThat(FreeReading.ends("1,250", said, 0)).isEmpty();
        assertThat(FreeReading.ends("1,250", said, 4)).isEmpty();
    }

    @Test
    void unitsDifferByTheirMeaningAlone() {
        assertThat(FreeReading.areDifferentUnits("milligrams", "micrograms")).isTrue();
        assertThat(FreeReading.areDifferentUnits("metre", "meters")).isFalse();
        assertThat(FreeReading.areDifferentUnits("foot", "feet")).isFalse();
        assertThat(FreeReading.areDifferentUnits("hours", "flowers")).isFalse();
    }

    private static boolean isReading(String written, String said) {
        List<String> words = List.of(said.split(" "));
        return FreeReading.ends(written, words, 0).contains(words.size());
    }
}
