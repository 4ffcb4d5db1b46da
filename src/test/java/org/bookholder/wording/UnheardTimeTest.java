package org.bookholder.wording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.s;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Outcome;
import org.bookholder.follow.model.WordTime;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.session.Decision;
import org.bookholder.session.LineNotes;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

final class UnheardTimeTest {
    private static final ScriptLine LINE =
            Scripts.of("Turn the wheel slowly and watch the gap.").lines().get(0);

    @Test
    void aBeginningThatMayBeThereTwiceIsTold() {
        assertThat(in(heard(new double[][] {{1, 0, 0.3}, {2, 2.5, 2.7}, {3, 2.7, 3.1}})))
                .contains("2.2 s pass between “Turn” and “the”; part of the line may be there twice");
    }

    @Test
    void aPauseOrWordsThatWereNotHeardAreNoRepeat() {
        assertThat(in(heard(new double[][] {{1, 0, 0.3}, {2, 1.4, 1.6}, {3, 1.6, 2}})))
                .isEmpty();
        assertThat(in(heard(new double[][] {{1, 0, 0.3}, {5, 2, 2.2}, {6, 2.2, 2.5}})))
                .isEmpty();
        assertThat(in(heard(new double[0][]))).isEmpty();
    }

    @Test
    void whoeverHasDecidedToUseItIsNotToldAgain() {
        Attempt twice = heard(new double[][] {{1, 0, 0.3}, {2, 2.5, 2.7}});
        assertThat(in(twice, Optional.of(new Decision(Decision.Choice.KEEP, 1, 1, s(5)))))
                .isEmpty();
        assertThat(in(twice, Optional.of(new Decision(Decision.Choice.RECORD_AGAIN, 1, 1, s(5)))))
                .isPresent();
    }

    private static Optional<String> in(Attempt attempt) {
        return in(attempt, Optional.empty());
    }

    private static Optional<String> in(Attempt attempt, Optional<Decision> decision) {
        LineNotes notes = new LineNotes(
                1, Outcome.CLEAN, true, List.of(attempt), Optional.of(attempt), List.of(), Optional.empty(), decision);
        return UnheardTime.in(LINE, notes, attempt);
    }

    private static Attempt heard(double[][] words) {
        List<WordTime> times = Arrays.stream(words)
                .map(w -> new WordTime((int) w[0], s(w[1]), s(w[2])))
                .toList();
        return new Attempt(1, 1, 1, s(0), s(4), true, times, List.of());
    }
}
