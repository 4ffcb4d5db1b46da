package org.bookholder.follow.judge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Collectors;
import org.bookholder.follow.model.Attempt;
import org.bookholder.wording.Labels;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is reported of one line, by what each ear heard. */
final class JudgedLineTest {
    private static final String LINE = "Turn the wheel slowly and watch the gap beside the brake";

    @ParameterizedTest
    @CsvSource(
            delimiter = ':',
            value = {
                "the wheel slowly and watch the gap beside the brake : misread, 1 Turn dropped",
                "wheel slowly and watch the gap beside the brake : incomplete",
                "turn the wheel slowly and watch the gap beside the : misread, 11 brake dropped",
                "turn the wheel slowly and watch the gap beside : incomplete",
            })
    void oneWordOfElevenMayBeMissingAtEitherEnd(String read, String reported) {
        assertThat(reported(OneLine.read(LINE, read))).isEqualTo(reported);
    }

    @Test
    void aSeventhOfALongLineMayBeMissing() {
        String line =
                "one hub two spokes three rims four tyres five valves six nuts seven bolts eight cones nine balls ten";
        assertThat(line.split(" ")).hasSize(19);
        assertThat(OneLine.read(line, line.replace(" balls ten", "")))
                .singleElement()
                .matches(Attempt::complete);
        assertThat(OneLine.read(line, line.replace(" nine balls ten", "")))
                .singleElement()
                .matches(attempt -> !attempt.complete());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ':',
            value = {
                "turn the wheel really slowly and watch the gap beside the brake : misread, 4 really added",
                "turn the wheel seven thousand slowly and watch the gap beside the brake :"
                        + " misread, 4 seven added, 4 thousand added",
                "turn the window slowly and watch the gap really beside the brake :"
                        + " misread, 3 window for wheel swapped, 9 really added",
                "turn the bicycle really slowly and watch the gap beside the brake :"
                        + " misread, 3 bicycle really for wheel swapped",
            })
    void addedWordsAreReportedInTheirOrder(String read, String reported) {
        assertThat(reported(OneLine.read(LINE, read))).isEqualTo(reported);
    }

    @Test
    void wordsReadInTheWrongOrderAreReported() {
        assertThat(reported(OneLine.read(LINE, "turn the slowly wheel and watch the gap beside the brake")))
                .startsWith("misread");
    }

    @ParameterizedTest
    @CsvSource({
        "turn the wheels slowly and watch the gap beside the brake",
        "turn the wheel slowly and watch the gab beside the brake",
        "turn the wheel slowly watch and the gap beside the brake",
        "turn the wheel slowly and watch gap the beside the brake",
    })
    void nearlyTheSameSoundAndMovedFunctionWordsAreNotReported(String read) {
        assertThat(reported(OneLine.read(LINE, read))).isEqualTo("clean");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ':',
            value = {
                "turn the wheel - slowly and watch the gap beside the brake :"
                        + " turn the wheel really slowly and watch the gap beside the brake : clean",
                "turn the wheel [unk] slowly and watch the gap beside the brake :"
                        + " turn the wheel really slowly and watch the gap beside the brake : misread, 4 really added",
                "turn the wheel [unk] slowly and watch the gap beside the brake :"
                        + " turn the wheel - slowly and watch the gap beside the brake : clean",
                "turn the [unk] slowly and watch the gap beside the brake :"
                        + " turn the wheel slowly and watch the gap beside the brake : clean",
                "turn the wheel slowly and watch the gap beside the brake :"
                        + " turn the window slowly and watch the gap beside the brake : clean",
                "turn the [unk] slowly and watch the gap beside the brake :"
                        + " turn the window slowly and watch the gap beside the brake :"
                        + " misread, 3 window for wheel swapped",
                "turn the - slowly and watch the gap beside the brake :"
                        + " turn the - slowly and watch the gap beside the brake : misread, 3 wheel dropped",
                "[unk] [unk] [unk] slowly and watch the gap beside the brake :"
                        + " turn the wheel slowly and watch the gap beside the brake : clean",
                "turn the wheel slowly and watch the gap beside [unk] [unk] :"
                        + " turn the wheel slowly and watch the gap beside the brake : clean",
            })
    void onlyWhatBothEarsMissedOrHeardIsReported(String scriptEar, String openEar, String reported) {
        assertThat(reported(OneLine.heard(LINE, scriptEar, openEar))).isEqualTo(reported);
    }

    /** What a learner would do wrongly is reported even if it sounds nearly the same, and if the script ear took it for the word. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ':',
            value = {
                "press forty times and wait : press [unk] times and wait : press fifty times and wait :"
                        + " misread, 2 fifty for forty swapped",
                "press forty times and wait : press forty times and wait : press fifty times and wait :"
                        + " misread, 2 fifty for forty swapped",
                "press four times and wait : press four times and wait : press five times and wait :"
                        + " misread, 2 five for four swapped",
                "press thirteen times and wait : press thirteen times and wait : press thirty times and wait : clean",
                "press thirteen times and wait : press [unk] times and wait : press thirty times and wait :"
                        + " misread, 2 thirty for thirteen swapped",
                "press four times and wait : press four times and wait : press fine times and wait : clean",
                "press four times and wait : press four times and wait : press five dimes and wait : clean",
                "paint the brown door now : paint the [unk] door now : paint the green door now :"
                        + " misread, 3 green for brown swapped",
                "now increase the speed a little : now [unk] the speed a little : now decrease the speed a little :"
                        + " misread, 2 decrease for increase swapped",
                "now increase the speed a little : now [unk] the speed a little : now increased the speed a little : clean",
            })
    void anotherWordOfTheSameKindIsReported(String line, String scriptEar, String openEar, String reported) {
        assertThat(reported(OneLine.heard(line, scriptEar, openEar))).isEqualTo(reported);
    }

    /** The rules of sound are English; other alphabets are compared by their letters. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ':',
            value = {
                "сними красную крышку с большой банки : сними зелёную крышку с большой банки :"
                        + " misread, 2 зелёную for красную swapped",
                "сними красную крышку с большой банки : сними красную крышку с большой банки : clean",
                "γύρισε αργά τον τροχό και κοίτα : γύρισε αργά τον κύβο και κοίτα : misread, 4 κύβο for τροχό swapped",
            })
    void wordsOfOtherAlphabetsAreComparedByTheirLetters(String line, String read, String reported) {
        assertThat(reported(OneLine.read(line, read))).isEqualTo(reported);
    }

    /** The outcome of the only attempt, and each word that was not read as written. */
    private static String reported(List<Attempt> attempts) {
        assertThat(attempts).hasSize(1);
        return Labels.of(attempts.get(0).outcome())
                + attempts.get(0).deviations().stream()
                        .map(d -> ", " + d.word() + " "
                                + (d.said().isEmpty() || d.written().isEmpty()
                                        ? d.written() + d.said()
                                        : d.said() + " for " + d.written())
                                + " " + Labels.of(d.kind()))
                        .collect(Collectors.joining());
    }
}
