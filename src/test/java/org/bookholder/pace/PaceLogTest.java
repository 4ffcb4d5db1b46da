package org.bookholder.pace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.bookholder.testing.Readings.s;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

final class PaceLogTest {
    private static PaceLog read(PaceLog log, int words, double secondsEach) {
        PaceLog next = log;
        for (int i = 0; i < words; i++) {
            next = next.advance(s(secondsEach)).read(1).shown(100);
        }
        return next;
    }

    private static PaceLog begun() {
        return PaceLog.begin(PaceRules.defaults()).takeChanged(1).read(1);
    }

    private static PaceReading reading(PaceLog log) {
        return log.reading(TextLength.NONE, TextLength.of(1000), 100);
    }

    @Test
    void saysNothingBeforeThereAreEnoughWords() {
        assertThat(reading(read(begun(), 7, 0.5)).live()).isNaN();
        assertThat(reading(read(begun(), 7, 0.5)).lesson()).isNaN();
        assertThat(reading(read(begun(), 8, 0.5)).live()).isCloseTo(120, within(1e-9));
    }

    @Test
    void aHundredAndFiftyWordsInAMinuteAreAHundredAndFifty() {
        PaceReading pace = reading(read(begun(), 150, 0.4));
        assertThat(pace.live()).isCloseTo(150, within(1e-9));
        assertThat(pace.lesson()).isCloseTo(150, within(1e-9));
    }

    @Test
    void livePaceCoversTwentySecondsAndTheLessonsPaceEverything() {
        PaceReading pace = reading(read(read(begun(), 60, 1), 40, 0.5));
        assertThat(pace.live()).isCloseTo(120, within(1e-9));
        assertThat(pace.lesson()).isCloseTo(100 * 60 / 80.0, within(1e-9));
    }

    @Test
    void aPauseLowersTheLivePaceAndCountsForTheLessonOnceReadingGoesOn() {
        PaceLog paused = read(begun(), 100, 0.5).advance(s(10));
        assertThat(reading(paused).live()).isCloseTo(60, within(1e-9));
        assertThat(reading(paused).lesson()).isCloseTo(120, within(1e-9));
        assertThat(reading(paused.read(1)).lesson()).isCloseTo(101 * 60 / 60.0, within(1e-9));
    }

    @Test
    void theSilenceBeforeTheFirstWordOfATakeIsNotReading() {
        PaceLog log = PaceLog.begin(PaceRules.defaults())
                .takeChanged(1)
                .advance(s(30))
                .read(1);
        assertThat(reading(read(log, 40, 0.5)).lesson()).isCloseTo(120, within(1e-9));
    }

    @Test
    void aNewTakeResetsTheLivePaceButNotTheLessons() {
        PaceLog first = read(begun(), 60, 0.5);
        PaceLog second = first.takeChanged(2);
        assertThat(reading(second).live()).isNaN();
        assertThat(reading(second).lesson()).isCloseTo(120, within(1e-9));
        PaceLog read = read(second.advance(s(9)).read(1), 60, 1);
        assertThat(reading(read).live()).isCloseTo(60, within(1e-9));
        assertThat(reading(read).lesson()).isCloseTo(120 * 60 / 90.0, within(1e-9));
    }

    @Test
    void keepsNoMoreMarksThanAWindowHolds() {
        assertThat(read(begun(), 20_000, 0.4).marks()).hasSizeLessThanOrEqualTo(52);
    }

    @Test
    void timeLeftIsAtTheTargetAtFirstAndAtTheMeasuredPaceLater() {
        assertThat(PaceLog.begin(PaceRules.defaults())
                        .reading(TextLength.NONE, TextLength.of(1200), 150)
                        .projected())
                .isEqualTo(s(480));
        PaceReading soon = read(begun(), 100, 1).reading(TextLength.of(100), TextLength.of(1000), 120);
        // 16 words at the target, a fifth less: 100 and 12.8 words in 100 and 6.4 s
        assertThat(soon.left().seconds()).isCloseTo(900 * 106.4 / 112.8, within(0.1));
        PaceReading later = read(begun(), 600, 1).reading(TextLength.of(600), TextLength.of(1000), 120);
        assertThat(later.left().seconds()).isCloseTo(400, within(0.1));
        assertThat(later.projected().seconds()).isCloseTo(1000, within(0.1));
    }

    @Test
    void whatIsLeftIsWeighed() {
        PaceLog log = read(begun(), 600, 1);
        PaceReading pace = log.reading(new TextLength(600, 1200), new TextLength(1000, 2200), 120);
        assertThat(pace.left().seconds()).isCloseTo(500, within(0.1));
    }

    @Test
    void aPaceThatWaversBetweenTwoFiguresShowsOne() {
        SteadyFigure figure = SteadyFigure.NONE.next(102.6, 5);
        List<Double> shown = new ArrayList<>();
        for (int i = 0; i < 50; i++) {
            figure = figure.next(i % 2 == 0 ? 102.4 : 102.6, 5);
            shown.add(figure.shown());
        }
        assertThat(shown).containsOnly(105.0);
        assertThat(figure.next(100.9, 5).shown()).isEqualTo(100);
        assertThat(figure.next(Double.NaN, 5)).isEqualTo(SteadyFigure.NONE);
    }

    @Test
    void aBandChangesOnlyWhenThePaceHasClearlyReturned() {
        assertThat(PaceBand.UNKNOWN.next(109, 100, 0.1)).isEqualTo(PaceBand.ON_PACE);
        assertThat(PaceBand.ON_PACE.next(111, 100, 0.1)).isEqualTo(PaceBand.FAST);
        assertThat(PaceBand.FAST.next(108, 100, 0.1)).isEqualTo(PaceBand.FAST);
        assertThat(PaceBand.FAST.next(106, 100, 0.1)).isEqualTo(PaceBand.ON_PACE);
        assertThat(PaceBand.ON_PACE.next(89, 100, 0.1)).isEqualTo(PaceBand.SLOW);
        assertThat(PaceBand.SLOW.next(92, 100, 0.1)).isEqualTo(PaceBand.SLOW);
        assertThat(PaceBand.SLOW.next(94, 100, 0.1)).isEqualTo(PaceBand.ON_PACE);
        assertThat(PaceBand.SLOW.next(120, 100, 0.1)).isEqualTo(PaceBand.FAST);
        assertThat(PaceBand.FAST.next(Double.NaN, 100, 0.1)).isEqualTo(PaceBand.UNKNOWN);
    }
}
