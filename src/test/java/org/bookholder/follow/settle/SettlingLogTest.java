package org.bookholder.follow.settle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.s;

import java.util.List;
import org.bookholder.follow.evidence.Loudness;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.Hypothesis;
import org.bookholder.speech.RecognizedWord;
import org.junit.jupiter.api.Test;

/** The log by which a fault in settling can be reproduced. */
final class SettlingLogTest {
    @Test
    void hasTheErrorAndThenEachInputInItsOrder() {
        SettlingLog log = new SettlingLog(3, s(0), 7);
        log.heard(new Hypothesis.Final(EarKind.OPEN, s(2), List.of(new RecognizedWord("turn", s(0), s(1), 0.5))));
        log.told("move", 12);
        String text = log.text(new IllegalStateException("a planted fault"), new Loudness(s(0)));
        assertThat(text.lines().findFirst()).contains("java.lang.IllegalStateException: a planted fault");
        assertThat(text.lines().dropWhile(line -> !line.startsWith("take")))
                .containsExactly(
                        "take 3 from 0 at word 7",
                        "heard OPEN at " + s(2).ticks() + " to " + s(2).ticks() + " turn 0 " + s(1).ticks() + " 0.5",
                        "move 12",
                        "levels ");
        assertThat(text.lines())
                .as("an empty line parts the error from the inputs")
                .contains("");
    }
}
