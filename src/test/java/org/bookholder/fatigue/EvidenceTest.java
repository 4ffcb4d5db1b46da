package org.bookholder.fatigue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.s;

import org.bookholder.fatigue.BreakAdvice.Urgency;
import org.bookholder.pace.WordTally;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.pcollections.HashTreePMap;

/** Stumbling and pace in the last ten minutes, against the session's own first twenty. */
final class EvidenceTest {
    /** The first moment at which the last ten minutes lie after the first twenty. */
    private static final StreamTime NOW = s(29 * 60);

    /**
     * The scores are those of the test of two proportions with pooled variance (NIST/SEMATECH e-Handbook of Statistical
     * Methods, 7.3.3): the difference of the rates in its own standard deviations. At least 2.5 is asked for.
     */
    @ParameterizedTest
    @CsvSource({
        // words and fluffs of the first twenty minutes, then of the last ten
        "2000,   0, 1000,   0, NONE", // never a fluff
        "2000, 100, 1000,  50, NONE", // the same rate
        "2000, 400, 1000, 100, NONE", // stumbling less
        "2000, 200, 1000, 140, NONE", // a score of 3.26, but only 1.4 times the rate
        "2000, 500, 1000, 375, COMING", // exactly 1.5 times, a score of 7.1
        "2000, 500, 1000, 500, DUE", // exactly twice
        "2000,  30, 1000,  28, NONE", // 1.87 times, a score of 2.44
        "2000,  30, 1000,  29, COMING", // 1.93 times, a score of 2.60
        "1000,  20, 2000,  70, NONE", // 1.75 times, a score of 2.27
        "1000,  20, 2000,  90, DUE", // 2.25 times, a score of 3.43
        "4000, 200,  150,  14, NONE", // 1.87 times, a score of 2.36
        "4000, 200,  150,  16, DUE", // 2.13 times, a score of 3.07
        "2000,   2, 1000,   5, NONE", // five times, but by three fluffs: a score of 2.14
        "2000,   2, 1000,   7, DUE" // a score of 2.83
    })
    void stumblingCountsIfItIsMoreAndNotByChance(long words, long fluffs, long words2, long fluffs2, Urgency urgency) {
        Stumbling stumbling = stumbling(tally(words, fluffs, 100), tally(words2, fluffs2, 100));
        assertThat(Evidence.advice(stumbling, NOW).urgency()).isEqualTo(urgency);
    }

    @ParameterizedTest
    @CsvSource({"114, NONE", "116, COMING", "124, COMING", "125, DUE", "86, NONE", "84, COMING", "76, COMING", "75, DUE"
    })
    void aPaceThatDriftsEitherWayCounts(double pace, Urgency urgency) {
        Stumbling stumbling = stumbling(tally(2000, 20, 100), tally(1000, 10, pace));
        assertThat(Evidence.advice(stumbling, NOW).urgency()).isEqualTo(urgency);
    }

    @Test
    void theMoreUrgentOfTheTwoIsGiven() {
        StumbleTally first = tally(2000, 100, 100);
        assertThat(Evidence.advice(stumbling(first, tally(1000, 80, 125)), NOW).figures())
                .isEqualTo(new AdviceFigures.Pace(125, 100));
        assertThat(Evidence.advice(stumbling(first, tally(1000, 100, 125)), NOW).figures())
                .isEqualTo(new AdviceFigures.Fluffs(10, 5));
        assertThat(Evidence.advice(stumbling(first, tally(1000, 50, 100)), NOW).figures())
                .isEqualTo(new AdviceFigures.Fluffs(5, 5));
    }

    @ParameterizedTest
    @CsvSource({"99, 1000, 1740", "2000, 99, 1740", "2000, 1000, 1739"})
    void nothingIsSaidOfTooFewWordsOrTooEarly(long first, long recent, double seconds) {
        Stumbling stumbling = stumbling(tally(first, 0, 100), tally(recent, 50, 100));
        BreakAdvice advice = Evidence.advice(stumbling, s(seconds));
        assertThat(advice.urgency()).isEqualTo(Urgency.NONE);
        assertThat(advice.figures()).isEqualTo(new AdviceFigures.TooLittle());
    }

    @Test
    void aHundredWordsAreEnough() {
        Stumbling stumbling = stumbling(tally(100, 5, 100), tally(100, 16, 100));
        assertThat(Evidence.advice(stumbling, NOW).urgency()).isEqualTo(Urgency.DUE);
    }

    private static Stumbling stumbling(StumbleTally first, StumbleTally recent) {
        return new Stumbling(HashTreePMap.singleton(25, recent), first, StreamTime.ZERO, 0);
    }

    private static StumbleTally tally(long words, long fluffs, double pace) {
        return new StumbleTally(WordTally.of(words, s(words * 60 / pace)), fluffs);
    }
}
