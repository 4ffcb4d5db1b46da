package org.bookholder.follow.judge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import org.bookholder.follow.model.Attempt;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.bookholder.testing.ReadAloud;
import org.bookholder.wording.Labels;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lines with figures, read with another value or in a way that no rule names. Both ears hear every word. */
final class OtherReadingTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Set a course of 085° now. | set a course of oh eight five now",
                "The mtg. is in room 0412 tonight. | the meeting is in room oh four twelve tonight",
                "The invoice #00417 is open today. | the invoice oh oh four one seven is open today",
                "A 50/34 crankset is fitted here. | a fifty by thirty four crankset is fitted here",
                "The wind is SW today and strong. | the wind is southwest today and strong",
                "He ran the 100m in nine seconds. | he ran the hundred metres in nine seconds",
                "It has 1,200 users by now. | it has a thousand two hundred users by now",
                "Position 50°42′N is on the chart. | position fifty degrees forty two minutes north is on the chart",
            })
    void anotherWayToSayFiguresIsClean(String line, String read) throws ProblemException {
        assertThat(deviations(line, read)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Give 500 mg to the patient slowly. | give five hundred grams to the patient slowly | 500 mg swapped",
                "Use a 9\"x13\" pan for this one. | use a nine by thirty pan for this one | 9\"x13 swapped",
                "Sift 225 g of plain flour first. | sift two hundred and five grams of plain flour first | 225 g swapped",
                "A gradient of 1 in 37½ is steep. | a gradient of one in thirty seven is steep | 37½ swapped",
                "It costs $1,250 in the summer. | it costs twelve fifteen in the summer | $1,250 swapped",
                "Take a 0.5 mm pen for the outline. | take a five millimeter pen for the outline | 0.5 mm swapped",
                "It took 1h 45m from here. | it took two hours forty five minutes from here | 1h 45m swapped",
                "It is $16 for the set. | it is sixteen pounds for the set | $16 swapped",
                "Version 2.0.1 mends the door. | version two point one mends the door | 2.0.1 swapped",
                "She came on May 5, 1987 by train. | she came on march fifth nineteen eighty seven by train | May 5, 1987 swapped",
                "Open from 9am-5pm on most days. | open from nine p m to five p m on most days | 9am-5pm swapped",
                "Stop after 45 mins every day. | stop after forty five hours every day | 45 mins swapped",
            })
    void anotherValueIsCalled(String line, String read, String deviation) throws ProblemException {
        assertThat(deviations(line, read)).containsExactly(deviation);
    }

    /** The script ear, which knows few words beside the script's, took all for the written figure. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "keep the water at twenty six to twenty nine degrees for the night | 26–28 °C swapped",
                "keep the water and twenty six to twenty nine degrees for the night | 26–28 °C swapped",
                "keep the water at twenty six to seventy eight degrees for the night |",
                "keep the water at twenty six to - - degrees for the night |",
                "keep the water at twenty six to twenty eight degrees for the night |",
            })
    void anotherValueThatTheOpenEarIsSureOfIsCalled(String openEar, @Nullable String deviation)
            throws ProblemException {
        List<Attempt> attempts = OneLine.heard(
                reader("Keep the water at 26–28 °C for the night."),
                "keep the water at twenty six to twenty eight degrees for the night",
                openEar);
        assertThat(called(attempts)).isEqualTo(deviation == null ? List.of() : List.of(deviation));
    }

    /** "Weighty" is no number: an ear's mistake, not the reader's. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "A pressure of 120/80 is normal for them. | a pressure of one twenty over weighty is normal for them",
                "Wait for 40 seconds before the next one. | wait for four tea seconds before the next one",
            })
    void whatOnlySoundsLikeTheFigureIsNot(String line, String read) throws ProblemException {
        assertThat(deviations(line, read)).isEmpty();
    }

    private static List<String> deviations(String line, String read) throws ProblemException {
        return called(OneLine.read(reader(line), read.toLowerCase(Locale.ROOT)));
    }

    private static ReadAloud reader(String line) throws ProblemException {
        String text = "---\nlines: as-written\n---\n" + OneLine.text(line).replace("\n", "\n\n");
        return ReadAloud.of(ScriptReader.parse(text, "a.txt", Format.PLAIN_TEXT));
    }

    private static List<String> called(List<Attempt> attempts) {
        assertThat(attempts).singleElement().matches(Attempt::complete);
        return attempts.get(0).deviations().stream()
                .map(d -> d.written() + " " + Labels.of(d.kind()))
                .toList();
    }
}
