package org.bookholder.fatigue;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.fatigue.FatigueLimits.Limit;
import org.bookholder.problem.ProblemException;
import org.bookholder.settings.SettingsText;
import org.bookholder.settings.SettingsText.Values;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class LimitsFormTest {
    private final List<ProblemException> wrong = new ArrayList<>();

    @Test
    void readsBackWhatItWrites() {
        FatigueLimits limits = new FatigueLimits(
                Limit.ofMinutes(10, 20, 30),
                Limit.ofMinutes(40, 50, 60),
                Limit.ofMinutes(70, 80, 90),
                Limit.ofMinutes(100, 110, 120),
                Duration.ofMinutes(7),
                Duration.ofMinutes(300));
        assertThat(limits(String.join("\n", LimitsForm.lines(limits)))).isEqualTo(limits);
        assertThat(wrong).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "\n# mine\nvoice: 10,20, 30 # soon\nbreak: 10\n",
                "voice: [10, 20, 30]\nbreak: 10\n",
                "voice:\n  - 10\n  - 20\n  - 30\nbreak: '10'\n",
                "  voice : 10, 20, 30#soon\n\tbreak:10\n"
            })
    void changesOnlyTheNamedSettingsInAnyNotation(String text) {
        FatigueLimits limits = limits(text);
        assertThat(wrong).isEmpty();
        assertThat(limits.voice()).isEqualTo(Limit.ofMinutes(10, 20, 30));
        assertThat(limits.realBreak()).isEqualTo(Duration.ofMinutes(10));
        assertThat(limits.screen()).isEqualTo(FatigueLimits.defaults().screen());
    }

    @Test
    void anEmptyTextSetsNothing() {
        assertThat(limits("")).isEqualTo(FatigueLimits.defaults());
        assertThat(wrong).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "voise: 1, 2, 3 | limits.txt:2: there is no limit 'voise'; write one of voice, screen, reading, "
                        + "on-camera, break, recovery",
                "voice | limits.txt:2: 'voice' needs 3 numbers; write three whole numbers, rising: early warning,"
                        + " limit, well over",
                "voice: 20 | limits.txt:2: 'voice' needs 3 numbers; write three whole numbers, rising: early warning, "
                        + "limit, well over",
                "break: soon | limits.txt:2: break 'soon' is not a whole number; give 1 to 1440 minutes",
                "break: 0 | limits.txt:2: break 0 is out of range; give 1 to 1440 minutes",
                "break: -5 | limits.txt:2: break -5 is out of range; give 1 to 1440 minutes",
                "break: 5, 6 | limits.txt:2: 'break' needs 1 number; write a whole number of minutes",
                "reading: 50, 40, 60 | limits.txt:2: the minutes of 'reading' fall; write the smaller number first",
                "screen: 1, 2, 3 | limits.txt:2: 'screen' is given twice; leave one of them",
                "recovery: 4 | limits.txt: 'recovery' is shorter than 'break'; make it at least as long, usually some "
                        + "hours",
            })
    void aWrongLineAffectsNoOtherLine(String line, String message) {
        FatigueLimits limits = limits("screen: 11, 12, 13\n" + line + "\non-camera: 14, 15, 16\n");
        assertThat(wrong).extracting(ProblemException::getMessage).containsExactly(message);
        FatigueLimits defaults = FatigueLimits.defaults();
        assertThat(limits)
                .isEqualTo(new FatigueLimits(
                        defaults.voice(),
                        Limit.ofMinutes(11, 12, 13),
                        defaults.reading(),
                        Limit.ofMinutes(14, 15, 16),
                        defaults.realBreak(),
                        defaults.recovery()));
    }

    private FatigueLimits limits(String text) {
        Values<List<Duration>> values = SettingsText.of(text, "limits.txt").read(LimitsForm.FORM);
        wrong.addAll(values.wrong());
        return LimitsForm.of(values, "limits.txt", wrong);
    }
}
