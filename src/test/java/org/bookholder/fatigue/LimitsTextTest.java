package org.bookholder.fatigue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.time.Duration;
import org.bookholder.fatigue.FatigueLimits.Limit;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class LimitsTextTest {
    @Test
    void readsBackWhatItWrites() throws ProblemException {
        FatigueLimits defaults = FatigueLimits.defaults();
        assertThat(LimitsText.parse(String.join("\n", LimitsText.of(defaults)), "limits.txt"))
                .isEqualTo(defaults);
    }

    @Test
    void changesOnlyWhatIsNamed() throws ProblemException {
        FatigueLimits limits = LimitsText.parse("\n# mine\nvoice: 10,20, 30 # soon\nbreak: 10\n", "limits.txt");
        assertThat(limits.voice()).isEqualTo(Limit.ofMinutes(10, 20, 30));
        assertThat(limits.realBreak()).isEqualTo(Duration.ofMinutes(10));
        assertThat(limits.screen()).isEqualTo(FatigueLimits.defaults().screen());
    }

    @Test
    void anEmptyTextSetsNothing() throws ProblemException {
        assertThat(LimitsText.parse("", "limits.txt")).isEqualTo(FatigueLimits.defaults());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "voise: 1, 2, 3 | limits.txt:1: there is no limit 'voise'; write one of voice, screen, reading, "
                        + "on-camera, break, recovery",
                "voice | limits.txt:1: 'voice' needs 3 numbers; write voice: near, at, past, in whole minutes from 1 to "
                        + "1440, rising",
                "voice: 20 | limits.txt:1: 'voice' needs 3 numbers; write voice: near, at, past, in whole minutes from "
                        + "1 to 1440, rising",
                "break: soon | limits.txt:1: 'soon' is no limit for 'break'; write break: and whole minutes, 1 to 1440",
                "break: 0 | limits.txt:1: '0' is no limit for 'break'; write break: and whole minutes, 1 to 1440",
                "break: -5 | limits.txt:1: '-5' is no limit for 'break'; write break: and whole minutes, 1 to 1440",
                "screen: 50, 40, 60 | limits.txt:1: the minutes of 'screen' fall; write screen: near, at, past, in whole "
                        + "minutes from 1 to 1440, rising",
                "'break: 5\nbreak: 6' | limits.txt:2: 'break' is given twice; leave one of them",
                "'break: 30\nrecovery: 20' | limits.txt: 'recovery' is shorter than 'break'; make it as long at least, "
                        + "usually some hours",
            })
    void namesWhatIsWrongByLineWithWhatToDo(String text, String message) {
        assertThatExceptionOfType(ProblemException.class)
                .isThrownBy(() -> LimitsText.parse(text, "limits.txt"))
                .withMessage(message);
    }
}
