package org.bookholder.handoff.captions;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.s;

import java.util.Arrays;
import java.util.List;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.WordTime;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

/** Times of a line's six words, of which an attempt from 1 s to 7 s has heard some. */
final class CutTranscriptTest {
    private static final List<ScriptWord> WORDS =
            Scripts.of("Every wheel begins with its hub.").lines().get(0).words();

    @Test
    void wordsThatWereNotHeardShareTheTimeBetweenTheOthers() {
        assertThat(spread(heard(3, 3, 4)))
                .containsExactly(
                        "Every 1.0-2.0",
                        "wheel 2.0-3.0",
                        "begins 3.0-4.0",
                        "with 4.0-5.0",
                        "its 5.0-6.0",
                        "hub. 6.0-7.0");
        assertThat(spread()).first().isEqualTo("Every 1.0-2.0");
        assertThat(spread(heard(1, 1, 1.5), heard(6, 6, 7)))
                .startsWith("Every 1.0-1.5", "wheel 1.5-2.625")
                .endsWith("hub. 6.0-7.0");
    }

    @Test
    void aWordThatIsHeardAgainOrOutOfOrderKeepsItsFirstTime() {
        assertThat(spread(heard(2, 2, 3), heard(2, 3, 4), heard(1, 4, 5), heard(3, 5, 6)))
                .containsSubsequence("Every 1.0-2.0", "wheel 2.0-3.0", "begins 5.0-6.0")
                .hasSize(6);
    }

    @Test
    void timesThatGoBackAndWordsBeyondTheLineAreLeftOut() {
        assertThat(spread(heard(1, 1, 3), heard(2, 2.5, 4), heard(9, 5, 6)))
                .containsExactly(
                        "Every 1.0-3.0",
                        "wheel 3.0-3.8",
                        "begins 3.8-4.6",
                        "with 4.6-5.4",
                        "its 5.4-6.2",
                        "hub. 6.2-7.0");
    }

    private static WordTime heard(int word, double start, double end) {
        return new WordTime(word, s(start), s(end));
    }

    private static List<String> spread(WordTime... heard) {
        Attempt attempt = new Attempt(1, 1, 1, s(1), s(7), true, Arrays.asList(heard), List.of());
        return CutTranscript.spread(WORDS, attempt).stream()
                .map(word -> word.text() + " " + word.start().seconds() + "-"
                        + word.end().seconds())
                .toList();
    }
}
