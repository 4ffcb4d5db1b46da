package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.script.source.ScriptReader.Format;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** From memory unless a source is named: what people say where numbers, signs and short forms are written. */
class NaturalReadingsTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "-8°C | minus eight degrees celsius",
                "-8 °C | negative eight degrees",
                "\u22128° | eight below zero",
                "\u20133.5% | minus three point five percent",
                "-$12 | minus twelve dollars",
                "-.5 | minus point five",
                "8 - 3 = 5 | eight minus three equals five",
                "7.5 hours | seven and a half hours",
                "3.25% | three and a quarter percent",
                "0.5 kg | half a kilogram",
                "3.5 million people | three and a half million people",
                "1.5 million people | a million and a half people",
                "1 million views | a million views",
                "$1.5 billion | a billion and a half dollars",
                "20-30 people | twenty through thirty people",
                "20–30 people | twenty until thirty people",
                "1998–2003 | nineteen ninety eight to two thousand three",
                "8-10 year old kids | eight to ten year old kids",
                "600 sq ft | six hundred square feet",
                "600 sq. ft. | six hundred square feet",
                "Tue-Thu | tuesday through thursday",
                "Sept.–Nov. | september to november",
                "06/21 | june twenty first",
                "v2.14.3 | version two point fourteen point three",
                "v3.0 | version three",
                "10.0.0.7 | ten dot zero dot zero dot seven",
                "1-888-555-0143 | one eight eight eight five five five oh one four three",
                "1-900-555-0143 | one nine hundred five five five oh one four three",
                "0161 496 0123 | oh one six one four nine six oh one two three",
                "a² | a squared",
                "√9 | the square root of nine",
                "θ | theta",
                "CO₂ | carbon dioxide",
                "H₂O | h two o",
                "6 mg/l | six milligrams per liter",
                "2h 5m | two hours and five minutes",
                "1h 45m | an hour and forty five minutes",
                "7 pm PST | seven p m pacific time",
                "3 yrs | three years",
                "8 mos. | eight months",
                "40 bps | forty basis points",
                "incl. tax | including tax",
                "Ctrl+C | control c",
                "Ctrl-Alt-Del | control alt delete",
                "⌘S | command s",
                "Ctrl/Cmd+Z | control or command z",
                "A $50 note | a fifty dollar note",
                "EUR 20 | twenty euros",
                "20€ | twenty euros",
                "425°F | four twenty five",
                "425 °F | four twenty five degrees",
                "1/125 s | one one twenty fifth of a second",
                "1/60 sec | one sixtieth of a second",
                "Rocky IV | rocky four",
                "SQL | sequel",
                "SQL | s q l",
                "3x faster | three times faster",
                "2x faster | twice as faster",
                "x < 3 | x is less than three",
                "3/8 inch | three eighths of an inch",
                "1/80 s | an eightieth of a second",
                "1/8 of a turn | an eighth of a turn",
                "2 1/8 turns | two and an eighth turns",
                "7/100 of it | seven hundredths of it",
                "1/100 of it | a hundredth of it",
                "50 ms - 2 s | fifty milliseconds to two seconds",
                "50 - 80 cm | fifty to eighty centimeters",
                "50 cm - 80 cm | fifty to eighty centimeters",
                "7/25/98 | july twenty fifth nineteen ninety eight",
                "7/25/27 | july twenty fifth twenty twenty seven",
                "-14LUFS | minus fourteen lufs",
                "x=-5 | x equals minus five",
                "10 - 3 | ten minus three",
                "10 \u2212 3 | ten minus three",
                "10\u22123=7 | ten minus three equals seven",
                "5-3=2 | five take away three equals two",
                "Opt-in | opt in",
                "Win-win | win win",
                "Opt-click | option click",
                "Ctrl-click | control click",
                "#2 | number two",
                "1/125 second | one one twenty fifth of a second",
                "1/125 shutter | one one twenty fifth shutter",
                "1/125 shutter | one over one twenty five shutter",
                "10⁶ | ten to the sixth",
                "10⁶ | ten to the power of six",
                "10⁻³ | ten to the minus three",
                "2x10¹² | two times ten to the twelfth",
                "x⁴ | x to the fourth power",
                "0.5 million | half million",
            })
    void acceptsWhatPeopleSay(String written, String said) throws ProblemException {
        assertThat(said(written, "en-US")).contains(said);
    }

    /** The order of day and month is that of Unicode CLDR's short date patterns. */
    @ParameterizedTest
    @CsvSource({
        "en-GB, 3/9/2027, the third of september twenty twenty seven",
        "en-US, 3/9/2027, march ninth twenty twenty seven",
        "en-AU, 07/12, the seventh of december",
        "en-US, 07/12, july twelfth",
        "en-GB, 3/9, the third of september",
        "en-GB, 2027-09-03, september third twenty twenty seven"
    })
    void readsDatesInTheOrderOfTheLanguage(String language, String written, String said) throws ProblemException {
        assertThat(said(written, language)).contains(said);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "-8°C | eight degrees celsius",
                "\u22128 | eight",
                "-$12 | twelve dollars",
                "-8% | eight percent",
                "8 - 3 = 5 | eight to three equals five",
                "8 - 3 = 5 | eight three equals five",
                "v2.14.3 | version two point fourteen",
                "20-30 people | twenty people",
                "5°C | minus five degrees celsius",
                "$50 note | fifty note",
                "$50 today | fifty dollar today",
                "1,250°C | two fifty degrees celsius",
                "1,250°C | two fifty",
                "10.001 mm | one thousandth of a millimeter",
                "50 ms - 2 s | fifty to two seconds",
                "7/25/98 | july twenty fifth twenty ninety eight",
                "-14LUFS | fourteen lufs",
                "x=-5 | x equals five",
                "10 \u2212 3 | ten to three",
                "10 \u2212 3 | ten three",
                "5-3=2 | five to three equals two",
                "Opt-in | option in",
                "#2 | hashtag two",
                "10⁶ | ten",
                "0.5 million | zero million and a half",
            })
    void acceptsNothingThatChangesTheMeaning(String written, String said) throws ProblemException {
        assertThat(said(written, "en-US")).doesNotContain(said);
    }

    private static List<String> said(String text, String language) throws ProblemException {
        String script = "---\nlanguage: " + language + "\nlines: as-written\n---\n" + text;
        List<String> said = List.of("");
        for (ScriptWord word : ScriptReader.parse(script, "x.txt", Format.PLAIN_TEXT)
                .lines()
                .get(0)
                .words()) {
            said = said.stream()
                    .flatMap(before -> word.spoken().stream().map(form -> before + " " + String.join(" ", form)))
                    .map(String::strip)
                    .toList();
        }
        return said;
    }
}
