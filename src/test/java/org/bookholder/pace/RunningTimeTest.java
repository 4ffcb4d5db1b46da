package org.bookholder.pace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.bookholder.script.model.ScriptSettings;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class RunningTimeTest {
    @ParameterizedTest
    @CsvSource({
        // by definition of words per minute
        "150, 60, 150",
        // 2 words in 1 s are 120 words a minute: worked in the BBC Subtitle Guidelines, section 4
        "2, 1, 120",
        // 160 to 180 words a minute are 0.375 to 0.33 s a word: BBC Subtitle Guidelines, section 4
        "1, 0.375, 160",
        // 256 words in 225 s; printed as 68.3 at mexico-insights.com
        "256, 225, 68.267"
    })
    void wordsOverTimeAreWordsAMinute(int words, double seconds, double rate) {
        assertThat(WordTally.of(words, StreamTime.ofSeconds(seconds)).perMinute())
                .isCloseTo(rate, within(0.001));
    }

    @ParameterizedTest
    @CsvSource({
        "1200, 150, 480",
        // 183 words a minute: mean of English reading aloud, 77 studies (Brysbaert 2019); 6 min 33.4 s
        "1200, 183, 393.443",
        "0, 100, 0"
    })
    void runningTimeIsWordsOverPace(int words, double pace, double seconds) {
        assertThat(RunningTime.of(words, pace).seconds()).isCloseTo(seconds, within(0.001));
    }

    @Test
    void aScriptWithoutSettingsIsCountedAtAHundredWordsAMinute() {
        // common practice: 100 words a minute for a lively delivery to camera
        assertThat(RunningTime.of(500, ScriptSettings.defaults().targetPace()).seconds())
                .isEqualTo(300);
    }

    @Test
    void theBlendMovesFromTargetToMeasured() {
        assertThat(RunningTime.blend(WordTally.NONE, 100, 100)).isEqualTo(100);
        WordTally aHundredAtFifty = WordTally.of(100, StreamTime.ofSeconds(120));
        // 200 words in 60 s and 120 s
        assertThat(RunningTime.blend(aHundredAtFifty, 100, 100)).isCloseTo(200 / 3.0, within(1e-9));
        WordTally manyAtFifty = WordTally.of(10_000, StreamTime.ofSeconds(12_000));
        assertThat(RunningTime.blend(manyAtFifty, 100, 100)).isBetween(50.0, 50.5);
    }

    @Test
    void thereIsNoRunningTimeAtNoPace() {
        assertThatThrownBy(() -> RunningTime.of(1, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("pace (0.0)");
        assertThat(WordTally.of(3, StreamTime.ZERO).perMinute()).isNaN();
    }
}
