package org.bookholder.pace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.bookholder.testing.Readings.added;
import static org.bookholder.testing.Readings.broken;
import static org.bookholder.testing.Readings.complete;
import static org.bookholder.testing.Readings.dropped;
import static org.bookholder.testing.Readings.s;
import static org.bookholder.testing.Readings.swapped;

import java.util.List;
import java.util.stream.IntStream;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.WordTime;
import org.bookholder.pace.TakeTime.Span;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.model.ScriptWord;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

final class PaceOfLineTest {
    private static final StreamTime PAUSE = PaceRules.defaults().pause();
    private static final ScriptLine LINE =
            Scripts.of("Mario climbed the oak tree.").lines().get(0);

    /** Words of 0.2 s with the given silences between them, in milliseconds. */
    private static Attempt read(int... gaps) {
        double[] starts = new double[gaps.length + 1];
        for (int i = 0; i < gaps.length; i++) {
            starts[i + 1] = starts[i] + 0.2 + gaps[i] / 1000.0;
        }
        List<WordTime> words = IntStream.rangeClosed(0, gaps.length)
                .mapToObj(i -> new WordTime(i + 1, s(starts[i]), s(starts[i] + 0.2)))
                .toList();
        return new Attempt(1, 1, 1, s(0), s(starts[gaps.length] + 0.2), true, words, List.of());
    }

    @Test
    void speakingRateHoldsThePausesAndArticulationRateDoesNot() {
        // speaking rate: units over total time; articulation rate: pauses left out (Jacewicz, Fox and Wei 2010)
        PaceOfLine pace = PaceOfLine.of(LINE, read(100, 1000, 100, 300), PAUSE);
        assertThat(pace.wordsPerMinute()).isCloseTo(5 * 60 / 2.5, within(1e-9));
        assertThat(pace.articulationRate()).isCloseTo(5 * 60 / 1.2, within(1e-9));
    }

    @Test
    void aSilenceCountsAsAPauseFromTheLimitOn() {
        assertThat(PaceOfLine.of(LINE, read(0, 250, 0, 0), PAUSE).articulated().ticks())
                .isEqualTo(s(1.0).ticks());
        assertThat(PaceOfLine.of(LINE, read(0, 249, 0, 0), PAUSE).articulated().ticks())
                .isEqualTo(s(1.249).ticks());
    }

    @Test
    void theLimitIsASetting() {
        // De Jong and Bosker 2013: the literature uses limits from 100 to 1000 ms
        assertThat(PaceOfLine.of(LINE, read(0, 250, 0, 0), s(1)).articulated().ticks())
                .isEqualTo(s(1.25).ticks());
        assertThat(PaceOfLine.of(LINE, read(0, 100, 0, 0), s(0.1)).articulated().ticks())
                .isEqualTo(s(1.0).ticks());
    }

    @Test
    void swappedWordsCountAsReadDroppedAndAddedOnesDoNot() {
        assertThat(PaceOfLine.of(LINE, complete(1, 1, 1, 5, 0, 2, dropped(4, "oak")), PAUSE)
                        .spoken()
                        .words())
                .isEqualTo(4);
        assertThat(PaceOfLine.of(LINE, complete(1, 1, 1, 5, 0, 2, swapped(4, "oak", "ash")), PAUSE)
                        .spoken()
                        .words())
                .isEqualTo(5);
        assertThat(PaceOfLine.of(LINE, complete(1, 1, 1, 5, 0, 2, added(4, "old")), PAUSE)
                        .spoken()
                        .words())
                .isEqualTo(5);
    }

    @Test
    void aBrokenOffLineCountsToItsLastWord() {
        PaceOfLine pace = PaceOfLine.of(LINE, broken(1, 1, 1, 3, 0, 1.5), PAUSE);
        assertThat(pace.spoken().words()).isEqualTo(3);
        assertThat(pace.wordsPerMinute()).isCloseTo(120, within(1e-9));
    }

    @Test
    void anAttemptWithNoWordHeardHasNoRate() {
        Attempt nothing = new Attempt(1, 1, 1, s(1), s(1), false, List.of(), List.of());
        assertThat(PaceOfLine.of(LINE, nothing, PAUSE).wordsPerMinute()).isNaN();
        assertThat(PaceOfLine.of(LINE, nothing, PAUSE).articulationRate()).isNaN();
    }

    @Test
    void wordsAreCountedAsSpoken() {
        ScriptWord year = Scripts.word("1999", "nineteen ninety nine", "one thousand nine hundred ninety nine");
        ScriptLine line = new ScriptLine(1, List.of(Scripts.word("In"), year), 0, 1);
        assertThat(PaceOfLine.of(line, complete(1, 1, 1, 2, 0, 2), PAUSE).wordsPerMinute())
                .isCloseTo(120, within(1e-9));
    }

    @Test
    void theTimeOfATakeLeavesOutHoldsAndAsidesOnceEvenWhereTheyOverlap() {
        List<Attempt> attempts = List.of(complete(1, 1, 1, 5, 10, 12), complete(1, 2, 1, 5, 30, 32));
        List<Aside> asides = List.of(new Aside(1, s(13), s(20), "", 1), new Aside(1, s(40), s(50), "", 1));
        List<Span> holds = List.of(new Span(s(18), s(25)), new Span(s(1), s(11)));
        assertThat(TakeTime.of(attempts, asides, holds)).isEqualTo(s(22 - 1 - 12));
        assertThat(TakeTime.of(List.of(), asides, holds)).isEqualTo(StreamTime.ZERO);
    }
}
