package org.bookholder.view.cue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.bookholder.pace.PaceBand;
import org.junit.jupiter.api.Test;

final class PaceCueTest {
    @Test
    void isLevelOnPace() {
        PaceCue cue = settled(100);
        assertThat(cue.band()).isEqualTo(PaceBand.ON_PACE);
        assertThat(cue.lean()).isCloseTo(0, within(0.01));
        assertThat(cue.figure()).isEqualTo(100);
        assertThat(cue.text()).isEqualTo("100");
    }

    @Test
    void leansUpWhenFastAndDownWhenSlowByAsMuchAsThePaceIsOff() {
        assertThat(settled(115).lean()).isCloseTo(0.5, within(0.02));
        assertThat(settled(85).lean()).isCloseTo(-0.5, within(0.02));
        assertThat(settled(115).band()).isEqualTo(PaceBand.FAST);
        assertThat(settled(85).band()).isEqualTo(PaceBand.SLOW);
    }

    @Test
    void neverLeansFurtherThanItCan() {
        assertThat(settled(300).lean()).isBetween(0.98, 1.0);
        assertThat(settled(10).lean()).isBetween(-1.0, -0.98);
    }

    @Test
    void movesSlowlySoThatItDoesNotDrawTheEye() {
        PaceCue cue = settled(100);
        double before = cue.lean();
        cue.advance(130, 100, 0.1);
        assertThat(cue.lean() - before).isLessThan(0.12);
    }

    @Test
    void itsFigureDoesNotFlickerBetweenTwoNeighbours() {
        PaceCue cue = settled(100);
        int changes = 0;
        for (int i = 0; i < 600; i++) {
            int before = cue.figure();
            cue.advance(i % 2 == 0 ? 100.4 : 101.6, 100, 0.1);
            changes += cue.figure() == before ? 0 : 1;
        }
        assertThat(changes).isZero();
    }

    @Test
    void itsFigureChangesAtMostEveryTwoSeconds() {
        PaceCue cue = settled(100);
        int changes = 0;
        for (int i = 0; i < 100; i++) {
            int before = cue.figure();
            cue.advance(100 + i, 100, 0.1);
            changes += cue.figure() == before ? 0 : 1;
        }
        assertThat(changes).isBetween(3, 5);
    }

    @Test
    void saysNothingWhileNothingIsMeasured() {
        PaceCue cue = settled(130);
        cue.advance(Double.NaN, 100, 10);
        assertThat(cue.band()).isEqualTo(PaceBand.UNKNOWN);
        assertThat(cue.figure()).isZero();
        assertThat(cue.lean()).isCloseTo(0, within(0.01));
    }

    private static PaceCue settled(double live) {
        PaceCue cue = new PaceCue();
        for (int i = 0; i < 200; i++) {
            cue.advance(live, 100, 0.1);
        }
        return cue;
    }
}
