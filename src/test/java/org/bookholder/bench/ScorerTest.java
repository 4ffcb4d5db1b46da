package org.bookholder.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.bookholder.bench.Findings.LineFound;
import org.bookholder.bench.Findings.Move;
import org.bookholder.bench.Findings.Time;
import org.bookholder.bench.Truth.LineTruth;
import org.bookholder.bench.Truth.Passage;
import org.bookholder.bench.Truth.SaidAside;
import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.Outcome;
import org.junit.jupiter.api.Test;

final class ScorerTest {
    /** Line 1 is read, then broken off and read again; an aside; line 2 is skipped, 3 misread. */
    private static final Truth TRUTH = new Truth(
            List.of(
                    new LineTruth(1, Outcome.CLEAN, Optional.empty()),
                    new LineTruth(2, Outcome.SKIPPED, Optional.empty()),
                    new LineTruth(3, Outcome.MISREAD, Optional.of(Deviation.Kind.SWAPPED))),
            List.of(new Passage(1, 1, 2, false), new Passage(1, 3, 6, true), new Passage(3, 10, 14, true)),
            List.of(new SaidAside(1, 7, 9)),
            20);

    @Test
    void perfectResultsGetTheFullScore() {
        Score score = Scorer.score(
                TRUTH,
                new Findings(
                        List.of(
                                new LineFound(Outcome.CLEAN, 2, List.of(new Time(3, 6))),
                                new LineFound(Outcome.SKIPPED, 0, List.of()),
                                new LineFound(Outcome.MISREAD, 1, List.of(new Time(10, 14)))),
                        List.of(new Time(7, 9)),
                        List.of(new Move(0, 1, 1), new Move(10.5, 3, 2), new Move(14.5, 4, 1))));
        assertThat(score.lostFound).hasToString("1 of 1");
        assertThat(score.lostTrue).hasToString("1 of 1");
        assertThat(score.misread()).hasToString("1 of 1");
        assertThat(score.wronglyCalled).hasToString("0 of 1");
        assertThat(score.retakes).hasToString("1 of 1");
        assertThat(score.falseRetakes).hasToString("0 of 2");
        assertThat(score.bestRight).hasToString("1 of 1");
        assertThat(score.bounds.quantile(0.95)).isZero();
        assertThat(score.asides).hasToString("1 of 1");
        assertThat(score.falseAsides).isZero();
        assertThat(score.onLine.value()).isEqualTo(1);
        assertThat(score.jump.quantile(1)).isCloseTo(0.5, within(1e-9));
        assertThat(score.carriedOff).hasToString("0 of 1");
        assertThat(score.neverReached).hasToString("0 of 3");
    }

    @Test
    void everyFaultIsCounted() {
        Score score = Scorer.score(
                TRUTH,
                new Findings(
                        List.of(
                                new LineFound(Outcome.INCOMPLETE, 1, List.of(new Time(1, 2.2))),
                                new LineFound(Outcome.CLEAN, 2, List.of()),
                                new LineFound(Outcome.CLEAN, 1, List.of(new Time(10, 14)))),
                        List.of(new Time(15, 16)),
                        List.of(new Move(0, 1, 1), new Move(8, 3, 1), new Move(8.5, 4, 2))));
        assertThat(score.lostFound).hasToString("0 of 1");
        assertThat(score.lostTrue).hasToString("0 of 1");
        assertThat(score.misread()).hasToString("0 of 1");
        assertThat(score.wronglyCalled).hasToString("1 of 1");
        assertThat(score.retakes).hasToString("0 of 1");
        assertThat(score.falseRetakes).hasToString("1 of 2");
        assertThat(score.bestRight).hasToString("0 of 1");
        assertThat(score.bounds.quantile(1)).isCloseTo(3.8, within(1e-9));
        assertThat(score.asides).hasToString("0 of 1");
        assertThat(score.falseAsides).isEqualTo(1);
        assertThat(score.carriedOff).hasToString("1 of 1");
        assertThat(score.neverReached).hasToString("1 of 3");
    }

    @Test
    void theNextLinesFirstWordMayShowWhileTheLastWordEnds() {
        Score score = Scorer.score(
                TRUTH,
                new Findings(
                        List.of(
                                new LineFound(Outcome.CLEAN, 2, List.of()),
                                new LineFound(Outcome.SKIPPED, 0, List.of()),
                                new LineFound(Outcome.MISREAD, 1, List.of())),
                        List.of(),
                        List.of(new Move(0, 1, 1), new Move(10, 3, 1), new Move(13.45, 4, 1))));
        assertThat(score.onLineOrNext.value()).isEqualTo(1);
        assertThat(score.onLine.value()).isBetween(0.4, 0.9);
    }

    @Test
    void aQuantileIsTheValueThatThisShareDoesNotExceed() {
        Score.Lengths lengths = new Score.Lengths();
        for (int i = 1; i <= 20; i++) {
            lengths.add(i);
        }
        assertThat(lengths.quantile(0.95)).isEqualTo(19);
        assertThat(lengths.quantile(0.5)).isEqualTo(10);
    }
}
