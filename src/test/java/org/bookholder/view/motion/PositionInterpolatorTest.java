package org.bookholder.view.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.bookholder.view.Later;
import org.junit.jupiter.api.Test;

/** Where the voice is between recognised words, in virtual time; two words a second are usual. */
final class PositionInterpolatorTest {
    private static final double USUAL = 2;
    private static final double FRAME = 1.0 / 60;

    @Test
    void movesEvenlyBetweenTheWordsOfAnEvenReading() {
        PositionInterpolator lead = read(PositionInterpolator.restingAt(0), 0.5, 40);
        double slowest = lead.speed();
        double fastest = lead.speed();
        for (int word = 41; word < 45; word++) {
            for (double t = 0; t < 0.5; t += FRAME) {
                lead = Later.after(lead, word, USUAL, true, FRAME);
                slowest = Math.min(slowest, lead.speed());
                fastest = Math.max(fastest, lead.speed());
            }
        }
        assertThat(slowest).isGreaterThan(0.7 * USUAL);
        assertThat(fastest).isLessThan(1.4 * USUAL);
    }

    @Test
    void learnsTheRateOfTheReader() {
        PositionInterpolator lead = read(PositionInterpolator.restingAt(0), 0.25, 60);
        assertThat(lead.words() - lead.heard()).isBetween(0.0, PositionInterpolator.mostAhead(4.2));
        assertThat(Later.after(lead, lead.heard() + 1, USUAL, true, 0.1).speed())
                .isCloseTo(4, within(1.6));
    }

    @Test
    void isNeverFurtherAheadThanTheNextWordAndAHalfAndComesToRestInAPause() {
        PositionInterpolator lead = read(PositionInterpolator.restingAt(0), 0.5, 20);
        double last = lead.words();
        for (double t = 0; t < 6; t += FRAME) {
            lead = Later.after(lead, 20, USUAL, true, FRAME);
            assertThat(lead.words()).isBetween(last, 20 + PositionInterpolator.mostAhead(2.1));
            last = lead.words();
        }
        assertThat(lead.speed()).isLessThan(0.01);
    }

    @Test
    void isSlowedSoftlyWhenTheTakeIsHeld() {
        PositionInterpolator lead = read(PositionInterpolator.restingAt(0), 0.5, 20);
        PositionInterpolator next = Later.after(lead, 20, USUAL, false, FRAME);
        assertThat(next.speed()).isGreaterThan(0.7 * lead.speed());
        for (double t = 0; t < 1; t += FRAME) {
            next = Later.after(next, 20, USUAL, false, FRAME);
        }
        assertThat(next.speed()).isLessThan(0.01);
    }

    @Test
    void acceptsARevisionOfAFewWordsOnlyIfItLasts() {
        PositionInterpolator lead = read(PositionInterpolator.restingAt(0), 0.5, 20);
        double place = lead.words();
        PositionInterpolator slipped = lead;
        for (double t = 0; t < 1; t += FRAME) {
            slipped = Later.after(slipped, 17, USUAL, true, FRAME);
            assertThat(slipped.words()).isEqualTo(place);
            assertThat(slipped.slips()).isTrue();
        }
        for (double t = 0; t < 0.3; t += FRAME) {
            slipped = Later.after(slipped, 17, USUAL, true, FRAME);
        }
        assertThat(slipped.heard()).isEqualTo(17);
        assertThat(slipped.words()).isBetween(17.0, 18.7);
        assertThat(slipped.turned()).isTrue();
    }

    @Test
    void aWithdrawnRevisionHasNoEffect() {
        PositionInterpolator lead = read(PositionInterpolator.restingAt(0), 0.5, 20);
        PositionInterpolator slipped = Later.after(lead, 18, USUAL, true, 0.2);
        PositionInterpolator back = Later.after(slipped, 20, USUAL, true, FRAME);
        assertThat(back.words()).isGreaterThanOrEqualTo(lead.words());
        assertThat(back.turned()).isFalse();
    }

    @Test
    void goesAlongWithAJumpAtOnceAndIsNotMisledAboutTheRate() {
        PositionInterpolator lead = read(PositionInterpolator.restingAt(0), 0.5, 20);
        PositionInterpolator jumped = Later.after(lead, 300, USUAL, true, FRAME);
        assertThat(jumped.words()).isBetween(300.0, 300.1);
        assertThat(jumped.jumped()).isTrue();
        assertThat(read(jumped, 0.5, 3).speed()).isLessThan(1.6 * USUAL);
    }

    private static PositionInterpolator read(PositionInterpolator from, double seconds, int words) {
        PositionInterpolator lead = from;
        int start = from.heard();
        for (int word = start + 1; word <= start + words; word++) {
            for (double t = 0; t < seconds - 1e-9; t += FRAME) {
                lead = Later.after(lead, word, USUAL, true, FRAME);
            }
        }
        return lead;
    }
}
