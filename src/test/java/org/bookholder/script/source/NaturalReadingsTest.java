package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;

import org.bookholder.problem.ProblemException;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** From memory unless a source is named: what people say where numbers, signs and short forms are written. */
class NaturalReadingsTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "-8°C | minus eight degrees celsius",
                "Q3 1500 people | q three one thousand five hundred people",
                "Q3 1500 people | third quarter fifteen hundred people",
                "Q3 2024 | q three twenty twenty four",
                "Q2 2000 orders | q two two thousand orders",
                "Q2 1999 orders | second quarter one thousand nine hundred ninety nine orders",
                "Q1 90 people | q one ninety people",
                "March 1500 people | march one thousand five hundred people",
                "March 1500 | march fifteen hundred",
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
        assertThat(AllowedReadings.of(written, "en-US")).contains(said);
    }

    /**
     * Source: NeMo-text-processing, tests/nemo_text_processing/en/data_text_normalization (measure, math, money, range, date, time,
     * normalize_with_audio). Letters are said one by one here.
     */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "100 million kg | one hundred million kilograms",
                "41,459.00 km³ | forty one thousand four hundred and fifty nine point zero zero cubic kilometers",
                "y=x+1 | y equals x plus one",
                "1±2=3 | one plus or minus two equals three",
                "1≤2=3 | one less than or equal to two equals three",
                "1≠2=3 | one not equal to two equals three",
                "₩460 billion | four hundred sixty billion won",
                "¥30b | thirty billion yen",
                "$20.010 | twenty dollars one cent",
                "$50.00-$100.00 | fifty dollars to one hundred dollars",
                "US$76.3 trillion | seventy six point three trillion u s dollars",
                "2x8 m2 | two by eight square meters",
                "4:00 am - 8:12 pm | four a m to eight twelve p m",
                "1960s-80s | nineteen sixties to eighties",
                "1960-80 | nineteen sixty to eighty",
                "2016/07/03 | july third twenty sixteen",
                "01.10.2010 | january tenth twenty ten",
                "Jan-15-2020 | january fifteenth twenty twenty",
                "15-01-2020 | the fifteenth of january twenty twenty",
                "11/17/05 | november seventeenth oh five",
                "2Q22 | the second quarter of twenty two",
                "1.59 p.m. | one fifty nine p m",
                "2.5x | two and a half times",
                "10% to 20% | ten to twenty percent",
                "0.004 | zero point zero zero four",
            })
    void acceptsWhatATestSetOfAnotherProjectExpects(String written, String said) throws ProblemException {
        assertThat(AllowedReadings.of(written, "en-US")).contains(said);
    }

    /**
     * Kinds of forms. Written as style guides of public bodies in Britain have them (sutton.gov.uk, "All about numbers"; mind.org.uk,
     * "Numbers") and the SI brochure; names of units by that brochure, of currencies by Unicode CLDR, of states by the US Postal
     * Service's Publication 28; what is said from memory.
     */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "~8 kg | about eight kilograms",
                "~ 8 kg | roughly eight kilograms",
                "±4 dB | plus or minus four decibels",
                "0.4 mm ± 0.1 mm | zero point four plus or minus zero point one millimeters",
                "7.15pm | quarter past seven p m",
                "6am-11.30pm | six a m to eleven thirty p m",
                "2018/19 | twenty eighteen to nineteen",
                "the 00s | the noughties",
                "class of '06 | class of two thousand six",
                "24.11.2026 | the twenty fourth of november twenty twenty six",
                "7 Sep 2025 | september seventh twenty twenty five",
                "4–6 May | the fourth to the sixth of may",
                "9p | nine pence",
                "AU$25 | twenty five australian dollars",
                "PLN 30 | thirty polish zlotys",
                "4 sq km | four square kilometers",
                "7 sq miles | seven square miles",
                "between 10–15 °C | between ten and fifteen degrees celsius",
                "9.8 m/s² | nine point eight meters per second squared",
                "5 ml/kg/day | five milliliters per kilo a day",
                "10 mg/kg/h | ten milligrams per kilogram per hour",
                "4 m/s | four meters a second",
                "10⁵ m/s | ten to the fifth meters per second",
                "20 N | twenty newtons",
                "250 MPa | two hundred fifty megapascals",
                "6 kW·h | six kilowatt hours",
                "800 kg/m³ | eight hundred kilograms per cubic meter",
                "5'9\" | five foot nine",
                "6 ft 3 in | six feet three inches",
                "4 lb 8 oz | four pounds eight ounces",
                "1h 5m 20s | an hour five minutes and twenty seconds",
                "0800 496 0123 | oh eight hundred four nine six oh one two three",
                "+44 161 496 0123 | plus four four one six one four nine six oh one two three",
                "020 7946 0055 | oh two oh seven nine four six double oh double five",
                "16:20 | four twenty p m",
                "2:40 | two minutes forty",
                "128x128 px | one twenty eight by one twenty eight pixels",
                "2e6 rows | two million rows",
                "0.002 inch | two thousandths of an inch",
                "8ish | eightish",
                "model K-300 | model k three oh oh",
                "★★★ | three stars",
                "§ 7 | section seven",
                "2^10 | two to the tenth",
                "x \u2212 3 | x minus three",
                "https://example.org | h t t p s example dot org",
                "mail.example.co.uk | mail dot example dot co dot u k",
                "Austin, TX | austin texas",
                "--verbose | dash dash verbose",
                "Vol. IV | volume four",
                "King George V | king george the fifth",
                "A–F | a to f",
                "A $100 note | a hundred dollar note",
                "3-0 | three nil",
            })
    void acceptsTheUsualFormsOfEachKind(String written, String said) throws ProblemException {
        assertThat(AllowedReadings.of(written, "en-US")).contains(said);
    }

    /** Whatever else is said, a minus must be. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "-7",
                "\u22127",
                "-7°C",
                "-7 °F",
                "\u22123.5%",
                "-$40",
                "-£2.50",
                "-.5",
                "x=-7",
                "-14LUFS",
                "-7 kg",
                "-\u00bd",
                "-6 m/s",
                "-20 dB",
                "8\u22127=1",
                "-1.5 million",
                "x \u2212 3",
                "-1.5 kg",
                "-1\u00bd hours",
                "-0.015 in.",
                "\u2212440 Hz",
                "-6 dBFS",
                "-2 m/s\u00b2",
                "-$5 USD",
                "-10\u207b\u2074 m",
                "-2 lb 3 oz",
                "-5'"
            })
    void noFormLeavesOutAMinus(String written) throws ProblemException {
        assertThat(AllowedReadings.of(written, "en-US"))
                .isNotEmpty()
                .allMatch(form -> form.matches(".*\\b(?:minus|negative|below|less|take away)\\b.*"));
    }

    /** The order of day and month is that of Unicode CLDR's short date patterns. */
    @ParameterizedTest
    @CsvSource({
        "en-GB, 3/9/2027, the third of september twenty twenty seven",
        "en-US, 31/01/2027, the thirty first of january twenty twenty seven",
        "en-GB, 01/31/2027, january thirty first twenty twenty seven",
        "en-US, 3/9/2027, march ninth twenty twenty seven",
        "en-AU, 07/12, the seventh of december",
        "en-US, 07/12, july twelfth",
        "en-GB, 3/9, the third of september",
        "en-GB, 2027-09-03, september third twenty twenty seven"
    })
    void readsDatesInTheOrderOfTheLanguage(String language, String written, String said) throws ProblemException {
        assertThat(AllowedReadings.of(written, language)).contains(said);
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
                "~8 kg | eight kilograms",
                "\u00b14 dB | four decibels",
                "between 10-15 | between ten fifteen minutes",
                "24.11.2026 | twenty four point eleven point twenty twenty six",
                "4 kg | four pounds",
                "6\" | six",
                "120 BPM | one twenty",
                "6 g/1000 km | six grams per hundred kilometers",
                "10,000-50,000 | ten to fifty",
                "1939-45 | thirty nine to forty five",
                "2 lb 3 oz | two three",
                "0.015 in. | fifteen thousandths",
                "1\u00bd hrs | a half hour",
                "10 \u00d7 20 cm | ten by twenty",
                "320 yds/290 m | three hundred twenty",
                "0.1 inch | one hundredth of an inch",
                "10⁶ | ten",
                "0.5 million | zero million and a half",
            })
    void acceptsNothingThatChangesTheMeaning(String written, String said) throws ProblemException {
        assertThat(AllowedReadings.of(written, "en-US")).doesNotContain(said);
    }
}
