package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.bookholder.script.normalize.NumberWords;
import org.bookholder.script.normalize.SpokenForms;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Expected values: the spell-out rules of Unicode CLDR (common/rbnf/en.xml) as ICU4J 77.1 prints them, less hyphens. */
final class NumbersTest {
    private final NumberWords numbers = new NumberWords();

    @ParameterizedTest
    @CsvSource({
        "0, zero",
        "13, thirteen",
        "42, forty two",
        "100, one hundred",
        "101, one hundred one",
        "1001, one thousand one",
        "1080, one thousand eighty",
        "1234, one thousand two hundred thirty four",
        "123456, one hundred twenty three thousand four hundred fifty six",
        "1000001, one million one",
        "2345678, two million three hundred forty five thousand six hundred seventy eight",
    })
    void spellsCardinals(long n, String said) {
        assertThat(first(numbers.cardinal(n))).isEqualTo(said);
    }

    @ParameterizedTest
    @CsvSource({
        "101, one hundred and one",
        "1001, one thousand and one",
        "1080, one thousand and eighty",
        "1234, one thousand two hundred and thirty four",
        "123456, one hundred and twenty three thousand four hundred and fifty six",
        "1000001, one million and one",
        "2345678, two million three hundred and forty five thousand six hundred and seventy eight",
    })
    void acceptsCardinalsWithAnd(long n, String said) {
        assertThat(phrases(numbers.cardinal(n))).contains(said);
    }

    @ParameterizedTest
    @CsvSource({
        "1066, ten sixty six",
        "1100, eleven hundred",
        "1500, fifteen hundred",
        "1805, eighteen oh five",
        "1900, nineteen hundred",
        "1901, nineteen oh one",
        "1945, nineteen forty five",
        "1999, nineteen ninety nine",
        "2000, two thousand",
        "2001, two thousand one",
        "2009, two thousand nine",
        "2010, twenty ten",
        "2019, twenty nineteen",
        "2026, twenty twenty six",
        "2100, twenty one hundred",
    })
    void spellsYears(int year, String said) {
        assertThat(first(numbers.year(year))).isEqualTo(said);
    }

    @ParameterizedTest
    @CsvSource({
        "0, zeroth",
        "3, third",
        "12, twelfth",
        "13, thirteenth",
        "21, twenty first",
        "42, forty second",
        "100, one hundredth",
        "101, one hundred first",
        "1000, one thousandth",
        "1080, one thousand eightieth",
    })
    void spellsOrdinals(long n, String said) {
        assertThat(first(numbers.ordinal(n))).isEqualTo(said);
    }

    @ParameterizedTest
    @CsvSource({
        "0.5, zero point five",
        "3.14, three point one four",
        "99.9, ninety nine point nine",
        "234.567, two hundred thirty four point five six seven",
    })
    void spellsDecimals(String written, String said) {
        assertThat(first(numbers.written(written))).isEqualTo(said);
    }

    @Test
    void acceptsOtherUsualReadings() {
        assertThat(phrases(numbers.written("2019")))
                .startsWith("twenty nineteen")
                .contains("two thousand nineteen", "two thousand and nineteen");
        assertThat(phrases(numbers.written("1,500"))).contains("fifteen hundred", "one thousand five hundred");
        assertThat(phrases(numbers.written("101"))).contains("a hundred and one", "one oh one");
        assertThat(phrases(numbers.written("1905"))).contains("nineteen oh five", "nineteen hundred and five");
        assertThat(phrases(numbers.written("007"))).containsExactly("oh oh seven", "zero zero seven");
    }

    private static String first(SpokenForms forms) {
        return String.join(" ", forms.first());
    }

    private static List<String> phrases(SpokenForms forms) {
        return forms.all().stream().map(form -> String.join(" ", form)).toList();
    }
}
