package org.bookholder.pace;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptSettings;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

final class WordCountsTest {
    @Test
    void countsSpokenWordsBeforeEachPosition() {
        Script script = new Script(
                "t",
                "t.md",
                ScriptSettings.defaults(),
                List.of(
                        new ScriptLine(
                                1, List.of(Scripts.word("Since"), Scripts.word("1999.", "nineteen ninety nine")), 0, 1),
                        new ScriptLine(2, List.of(Scripts.word("Wait.")), 0, 2)));
        WordCounts counts = WordCounts.of(script);
        assertThat(counts.total()).isEqualTo(5);
        assertThat(counts.before(new ReadingPosition(1, 1))).isZero();
        assertThat(counts.before(new ReadingPosition(1, 2))).isEqualTo(1);
        assertThat(counts.before(new ReadingPosition(2, 1))).isEqualTo(4);
        assertThat(counts.before(new ReadingPosition(3, 1))).isEqualTo(5);
    }

    @Test
    void longWordsAndPausesTakeLonger() {
        WordCounts counts = WordCounts.of(Scripts.of("Well, algorithms.", "So it is."));
        TextLength first = counts.length(new ReadingPosition(2, 1));
        TextLength second = new TextLength(3, counts.length().weight() - first.weight());
        assertThat(first.words()).isEqualTo(2);
        assertThat(first.density(0)).isGreaterThan(2 * second.density(0));
        assertThat(counts.length(new ReadingPosition(1, 1))).isEqualTo(TextLength.NONE);
    }

    @Test
    void aWordPastALinesEndIsItsEnd() {
        WordCounts counts = WordCounts.of(Scripts.of("One two.", "Three four five."));
        assertThat(counts.before(new ReadingPosition(1, 9))).isEqualTo(2);
    }

    @Test
    void directionsDoNotCount() {
        assertThat(WordCounts.of(Scripts.of("One two.", "> Turn to the window.", "Three."))
                        .total())
                .isEqualTo(3);
    }
}
