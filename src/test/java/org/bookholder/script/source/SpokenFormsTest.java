package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.script.source.ScriptReader.Format;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class SpokenFormsTest {
    /**
     * Source: NeMo-text-processing, tests/nemo_text_processing/en/data_text_normalization. Letters are said one by one
     * here, and where the source says "and" in a number it is the second form.
     */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "$1 | one dollar",
                "$2.00 | two dollars",
                "$20.50 | twenty dollars fifty cents",
                "$20.5 | twenty dollars fifty cents",
                "$20.01 | twenty dollars one cent",
                "$0.02 | two cents",
                "$.01 | one cent",
                "$2.5 million | two point five million dollars",
                "£1.20 | one pound twenty pence",
                "£2.01 | two pounds one penny",
                "$18801 | eighteen thousand eight hundred and one dollars",
                "4 1/2 lbs | four and a half pounds",
                "july 25 2012 | july twenty fifth twenty twelve",
                "25 july 2012 | the twenty fifth of july twenty twelve",
                "1980s | nineteen eighties",
                "'80s | eighties",
                "2006-08-05 | august fifth two thousand six",
                "3 mbps | three megabits per second",
                "1428 Elm St. | fourteen twenty eight elm street",
                "5pm | five p m",
                "1:59 p.m. | one fifty nine p m",
                "01:00 | one o'clock",
                "23:00 | twenty three o'clock",
                "1:01:01 | one hour one minute and one second",
                "2pm-5pm | two p m to five p m",
                "12kg | twelve kilograms",
                "1 sec | one second",
                "5 min | five minutes",
                "2°C | two degrees celsius",
                "1°C | one degree celsius",
                "2-3 mins | two to three minutes",
            })
    void readsAbbreviatedNumbersAndUnits(String written, String said) throws ProblemException {
        assertThat(AllowedReadings.of(written)).contains(said);
        if (!said.contains(" and one dollars")) {
            assertThat(AllowedReadings.of(written).get(0)).isEqualTo(said);
        }
    }

    /** The suffixes are those of Unicode CLDR's digits-ordinal rules for English, the words those of spellout-ordinal. */
    @ParameterizedTest
    @CsvSource({
        "1st, first",
        "2nd, second",
        "3rd, third",
        "4th, fourth",
        "11th, eleventh",
        "12th, twelfth",
        "13th, thirteenth",
        "22nd, twenty second",
        "23rd, twenty third",
        "101st, one hundred first",
        "111th, one hundred eleventh",
        "112th, one hundred twelfth",
        "113th, one hundred thirteenth"
    })
    void readsOrdinalsWrittenShort(String written, String said) throws ProblemException {
        assertThat(AllowedReadings.of(written).get(0)).isEqualTo(said);
    }

    /** From memory: how English speakers say these. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "50% | fifty percent",
                "2.5% | two point five percent",
                "3/4 | three quarters",
                "1/3 | one third",
                "½ | one half",
                "1/2 cup | half a cup",
                "24/7 | twenty four seven",
                "-5 | minus five",
                "10–12 kg | ten to twelve kilograms",
                "1920x1080 | nineteen twenty by ten eighty",
                "8x4.5 | eight by four point five",
                "2,400x1,200 | two thousand four hundred by one thousand two hundred",
                "16:9 | sixteen by nine",
                "f/2.8 | f two point eight",
                "$5-a-day | five dollars a day",
                "$20/month | twenty dollars a month",
                "12-inch | twelve inch",
                "5'10\" | five foot ten",
                "555-0123 | five five five oh one two three",
                "(555) 555-0123 | five five five five five five oh one two three",
                "1.2.3 | one point two point three",
                "4K | four k",
                "USB | u s b",
                "CDs | c d's",
                "NASA | nasa",
                "MP3 | m p three",
                "COVID-19 | covid nineteen",
                "C++ | c plus plus",
                "C# | c sharp",
                "JavaScript | java script",
                "e.g. | for example",
                "Dr. Hill | doctor hill",
                "Hill Dr. | hill drive",
                "St. Ives | saint ives",
                "Out in the sun. | out in the sun",
                "We sat. | we sat",
                "On Sat. and Sun. | on saturday and sunday",
                "Mr. and Mrs. Hill | mister and missus hill",
                "U.S. | u s",
                "No. 5 | number five",
                "#1 | number one",
                "pp. 5-7 | pages five to seven",
                "Chapter IV | chapter four",
                "Henry VIII | henry the eighth",
                "World War II | world war two",
                "salt & pepper | salt and pepper",
                "and/or | and or",
                "cart.py | cart dot py",
                "info@example.com | info at example dot com",
                "https://example.org/page | example dot org slash page",
                "e-mail | email",
                "don’t | don't",
                "dogs' | dogs",
                "goin' | going",
                "'em | 'em",
                "rock 'n' roll | rock and roll",
                "O'Brien | o'brien",
                "café | cafe",
                "21st | twenty first",
                "1,002nd | one thousand second",
                "10k | ten thousand",
            })
    void acceptsTheUsualReading(String written, String said) throws ProblemException {
        assertThat(AllowedReadings.of(written)).contains(said);
    }

    /** Common practice: how the clock is read by quarters; after the half hour the hour that is named is the next one. */
    @ParameterizedTest
    @CsvSource({
        "5:15, quarter past five",
        "5:30, half past five",
        "5:45, quarter to six",
        "5:45, a quarter to six",
        "5:20, twenty past five",
        "5:40, twenty to six",
        "5:55 pm, five to six p m",
        "11:45, quarter to twelve",
        "12:45, quarter to one",
        "12:50, ten to one",
        "0:45, quarter to one"
    })
    void readsTheClockByTheNearerHour(String written, String said) throws ProblemException {
        assertThat(AllowedReadings.of(written)).contains(said);
    }

    /** The twenty-four hour clock is mostly read in figures. */
    @Test
    void readsTheTwentyFourHourClockInFiguresFirst() throws ProblemException {
        assertThat(AllowedReadings.of("23:45"))
                .startsWith("twenty three forty five")
                .contains("eleven forty five", "quarter to twelve");
        assertThat(AllowedReadings.of("5:45")).contains("quarter to six").doesNotContain("quarter to five");
        assertThat(AllowedReadings.of("5:43"))
                .startsWith("five forty three")
                .contains("five minutes forty three seconds");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "He will read the book | 5",
                "Fifty-seven | 2",
                "Daughter-in-law | 3",
                "co-opt | 1",
                "re-evaluate | 1",
                "Dr. Adams received a promotion. | 5",
            })
    // Source: US Department of Education, Monitoring Reading (Warkomski), rules 1, 11 and 12: words as counted
    void countsWordsAsOralReadingDoes(String written, int words) throws ProblemException {
        assertThat(line(written).spokenWords()).isEqualTo(words);
    }

    @Test
    void readsADateOnlyInContext() throws ProblemException {
        // Source: the same, rule 10: "May 5, 1999." read as "May five, one nine eight nine" is wrong
        assertThat(AllowedReadings.of("May 5, 1999."))
                .contains("may five nineteen ninety nine", "may fifth nineteen ninety nine")
                .doesNotContain("may five one nine eight nine");
        assertThat(AllowedReadings.of("you may 5 times")).contains("you may five times");
    }

    /** Common practice. */
    @Test
    void whatEqualsSomethingIsNoSpanOfYears() throws ProblemException {
        assertThat(AllowedReadings.of("1250-80 = 1170"))
                .contains("one thousand two hundred fifty minus eighty equals one thousand one hundred seventy");
        assertThat(AllowedReadings.of("1960-80")).contains("nineteen sixty to eighty");
    }

    @Test
    void readsAnAbbreviationOnlyAsItsWord() throws ProblemException {
        // Source: the same, rule 12: "Dr. Adams" read as "D-R Adams" is wrong
        assertThat(AllowedReadings.of("Dr. Adams")).contains("doctor adams").doesNotContain("d r adams");
    }

    @Test
    void joinsWrittenWordsThatAreSpokenTogether() throws ProblemException {
        ScriptLine line = line("We paid $2.5 million at 5 pm on July 25, 2012, for 12 kg.");
        assertThat(line.words().stream().map(ScriptWord::written))
                .containsExactly("We", "paid", "$2.5 million", "at", "5 pm", "on", "July 25, 2012,", "for", "12 kg.");
    }

    @Test
    void countsNumbersInTheLanguageOfTheScript() throws ProblemException {
        Script script = ScriptReader.parse("---\nlanguage: de\n---\nWir haben 25 Körbe.", "x.md", Format.MARKDOWN);
        assertThat(script.lines().get(0).words().get(2).spoken())
                .containsExactly(List.of("fünfundzwanzig"), List.of("funfundzwanzig"));
        assertThat(script.lines().get(0).words().get(3).spoken().get(0)).containsExactly("körbe");
    }

    private static ScriptLine line(String text) throws ProblemException {
        return ScriptReader.parse(text, "x.txt", Format.PLAIN_TEXT).lines().get(0);
    }
}
