package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;

import org.bookholder.problem.ProblemException;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What may mean two things: an amount or a time, a move or a chord, a part of a number or a range. From memory. */
final class EitherReadingTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "2000 hours | two thousand hours",
                "After 1000 hours | after one thousand hours",
                "It took 1200 h. | it took one thousand two hundred hours",
                "1500 hours of work | one thousand five hundred hours of work",
                "at 1500 hours | at fifteen hundred hours",
                "by 2000 hours of use | by two thousand hours of use",
                "at 0800 hrs | at oh eight hundred hours",
                "until 0900-1700 hrs | until oh nine hundred to seventeen hundred hours",
                "1530 hrs | one thousand five hundred thirty hours",
                "Bb5 | b flat five",
                "1. e4 e5 2. Nf3 Nc6 3. Bb5 | e four e five two knight f three knight c six three bishop b five",
                "found in 1:15:30 | found in one hour fifteen minutes and thirty seconds",
                "The solution was found in 1:15:30. | the solution was found in one hour fifteen minutes and thirty seconds",
                "A ratio of 3:2:1 | a ratio of three to two to one",
                "The pitch is at 9:30. | the pitch is at nine thirty",
                "The ratio is 1:20. | the ratio is one to twenty",
                "World War I-II | world war one to two",
                "Chapters I-V | chapters one to five",
                "the I-V curve | the i v curve",
                "the I-V chords | the one five chords",
                "$AUD 50 | fifty dollars",
                "$QZXJ rose | q z x j rose",
                "911/112 calls | nine one one one one two calls",
                "We asked HR. | we asked h r",
                "a BP of 120/80. | a b p of one hundred twenty over eighty",
                "12 pts. | twelve points",
            })
    void readsTheLikelierFirst(String written, String said) throws ProblemException {
        assertThat(AllowedReadings.of(written, "en-US").get(0)).isEqualTo(said);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "2000 hours | twenty hundred hours",
                "after 1200 h | after twelve hundred hours",
                "an ETA of 1530 hrs | an e t a of three thirty",
                "at 1500 hours | at one thousand five hundred hours",
                "Table 10-1 | table ten dash one",
                "Figure 12-3 | figure twelve dash three",
                "Chapter 11-2 | chapter eleven dash two",
                "pages 22-3 | pages twenty two dash three",
                "pages 22-3 | pages twenty two to twenty three",
                "pp. 134-6 | pages one hundred thirty four to one hundred thirty six",
                "rows 22-3 | rows twenty two and twenty three",
                "Nos. 22-3 | numbers twenty two to twenty three",
                "Bb4 | bishop b four",
                "Bb7 | b b seven",
                "Nf3 Nc6 Bb5 | knight f three knight c six b b five",
                "A ratio of 10:20:30 | a ratio of ten hours twenty minutes and thirty seconds",
                "Diluted at 1:20 | diluted at one to twenty",
                "World War I-II | world war one two",
                "$5/hr | five dollars an hour",
                "£20/kg | twenty pounds a kilo",
                "£9/m² | nine pounds per square metre",
                "¥5/lx | five yen per lux",
                "Rb2-d4 | rook b two to d four",
                "Rb2-d4 | r b two d four",
                "Nf3-g5 | knight f three g five",
                "exa1 | e x a one",
                "Nxf3 | n x f three",
                "$AUD 50 | fifty australian dollars",
                "$QZXJ | dollar q z x j",
                "$HOME | dollar home",
                "911/112 calls | nine eleven or one one two calls",
                "999/112 calls | triple nine slash one one two calls",
                "HR. | human resources",
                "2 pts. milk | two pints milk",
            })
    void allowsTheOther(String written, String said) throws ProblemException {
        assertThat(AllowedReadings.of(written, "en-US")).contains(said);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "2000 hours | twenty",
                "Table 10-1 | table ten dash eleven",
                "Table 10-1 | table ten and eleven",
                "Figure 12-3 | figure twelve to thirteen",
                "Chapter 11-2 | chapter eleven and twelve",
                "No. 22-3 | number twenty two to twenty three",
                "The pitch is at 9:30. | the pitch is at nine to thirty",
                "$5/hr | five dollars per hours",
                "£5/lb | five pounds a pounds",
                "Nxf3 | n f three",
                "exa1 | e a one",
                "He scored 12 pts. in the game | he scored twelve pints in the game",
            })
    void refusesWhatChangesTheMeaning(String written, String said) throws ProblemException {
        assertThat(AllowedReadings.of(written, "en-US")).doesNotContain(said);
    }
}
