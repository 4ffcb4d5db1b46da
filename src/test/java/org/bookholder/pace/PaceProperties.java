package org.bookholder.pace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.s;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;

final class PaceProperties {
    /** Numbers stand for words read, every seventh for a pause of as many seconds, every eleventh for a new take. */
    @Property
    void livePaceIsNeverNegativeAndTheSumsHold(
            @ForAll @Size(max = 200) List<@IntRange(min = 0, max = 40) Integer> steps) {
        PaceLog log = PaceLog.begin(PaceRules.defaults()).takeChanged(1);
        int take = 1;
        for (int step : steps) {
            log = step % 11 == 10
                    ? log.takeChanged(++take)
                    : step % 7 == 6
                            ? log.advance(s(step))
                            : log.advance(s(0.1 * step)).read(step % 4);
            PaceReading pace = log.shown(100).reading(TextLength.of(10), TextLength.of(100), 100);
            assertThat(pace.live() < 0).isFalse();
            assertThat(pace.lesson() < 0).isFalse();
            assertThat(pace.projected()).isGreaterThanOrEqualTo(pace.left());
            assertThat(log.takes().values().stream().reduce(WordTally.NONE, WordTally::plus))
                    .isEqualTo(log.lesson());
        }
    }

    @Property
    void theBlendLiesBetweenTargetAndMeasured(
            @ForAll @IntRange(min = 1, max = 10_000) int words,
            @ForAll @DoubleRange(min = 20, max = 400) double measured,
            @ForAll @IntRange(min = 40, max = 300) int target) {
        double blend = RunningTime.blend(WordTally.of(words, RunningTime.of(words, measured)), target, 100);
        assertThat(blend).isBetween(Math.min(measured, target) - 0.01, Math.max(measured, target) + 0.01);
    }

    @Property
    void theShownFigureIsNeverAStepAway(
            @ForAll @Size(min = 1, max = 100) List<@DoubleRange(min = 0, max = 400) Double> values) {
        SteadyFigure figure = SteadyFigure.NONE;
        for (double value : values) {
            figure = figure.next(value, 5);
            assertThat(Math.abs(figure.shown() - value)).isLessThan(5);
        }
    }
}
