package org.bookholder.course.prepare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.bookholder.course.Measured;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class LessonTimeTest {
    /** Words by pace: 150 in a minute at 150, 1,200 at 150 and at the mean of reading aloud (183, Brysbaert 2019). */
    @ParameterizedTest
    @CsvSource({"15, 10, 150, 60", "120, 10, 150, 480", "120, 10, 183, 393.4", "50, 10, 100, 300"})
    void runsAsLongAsItsWordsTakeAtThePace(int lines, int words, int pace, double seconds) {
        LessonTime time = LessonTime.of(
                1, "l.md", Scripts.sized(pace, lines, words), OptionalDouble.of(2.0 * pace), Optional.empty());
        assertThat(time.words()).isEqualTo(lines * words);
        assertThat(time.seconds()).isCloseTo(seconds, within(0.05));
        assertThat(time.ownSeconds().orElseThrow()).isCloseTo(seconds / 2, within(0.05));
    }

    @Test
    void theTextFitsATerminalAndNamesWhatPeopleStopWatching() {
        LessonTime time =
                LessonTime.of(1, "long.md", Scripts.sized(100, 70, 10), OptionalDouble.empty(), Optional.empty());
        List<String> text = TimeText.of(Optional.of("A course"), List.of(time, time), Measured.NOTHING, false);

        assertThat(text)
                .allMatch(row -> row.length() <= 80)
                .contains("The recogniser could not be asked which words it knows.");
        assertThat(text).anyMatch(row -> row.startsWith("Long: long.md (7:00), long.md (7:00). People stop watching"));
        assertThat(text).anyMatch(row -> row.matches(" +in all +1400 +14:00"));
    }

    @Test
    void saysWhatTheOwnPaceComesFrom() {
        Measured measured = new Measured(Duration.ofSeconds(725), OptionalDouble.of(120), OptionalDouble.empty());
        LessonTime time = LessonTime.of(1, "l.md", Scripts.sized(100, 12, 10), measured.pace(), Optional.empty());
        assertThat(TimeText.of(Optional.empty(), List.of(time), measured, true))
                .contains("Yours: at 120 words a minute, as measured over 12:05 of your own reading.");
    }
}
