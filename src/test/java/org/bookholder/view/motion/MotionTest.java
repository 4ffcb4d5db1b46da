package org.bookholder.view.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.bookholder.view.Later;
import org.junit.jupiter.api.Test;

/** Motion in virtual time: 60 pictures a second, rows of 100 pixels. */
final class MotionTest {
    private static final double PITCH = 100;
    private static final double FRAME = 1.0 / 60;

    @Test
    void staysWhereItRests() {
        Motion motion = Later.after(Motion.restingAt(340), to(340), 5, PITCH);
        assertThat(motion.at()).isEqualTo(340);
        assertThat(motion.speed()).isZero();
    }

    @Test
    void aJumpOfTwoRowsHasComeToRestInTwoFifthsOfASecond() {
        Motion motion = Motion.restingAt(0);
        for (double t = 0; t < 0.4; t += FRAME) {
            motion = Later.after(motion, to(200), FRAME, PITCH);
        }
        assertThat(motion.at()).isCloseTo(200, within(0.03 * 200));
        assertThat(motion.veil()).isZero();
    }

    @Test
    void aLongJumpReplacesTheTextUnseenAndEndsInTwoFifthsOfASecond() {
        Motion motion = Motion.restingAt(0);
        boolean exchanged = false;
        for (double t = 0; t < 0.4; t += 1.0 / 240) {
            Motion next = Later.after(motion, to(50_000), 1.0 / 240, PITCH);
            if (Math.abs(next.at() - motion.at()) > 0.5 * PITCH) {
                assertThat(next.veil()).isGreaterThan(0.98);
                exchanged = true;
            }
            motion = next;
        }
        assertThat(exchanged).isTrue();
        assertThat(motion.veil()).isZero();
        assertThat(motion.at()).isCloseTo(50_000, within(0.1 * PITCH));
    }

    @Test
    void comesInFromTheSideItLeftFrom() {
        Motion forward = Motion.restingAt(0);
        Motion back = Motion.restingAt(5000);
        for (int i = 0; i < 10; i++) {
            forward = Later.after(forward, to(5000), FRAME, PITCH);
            back = Later.after(back, to(0), FRAME, PITCH);
        }
        assertThat(forward.at()).isBetween(4800.0, 5000.0);
        assertThat(back.at()).isBetween(0.0, 200.0);
    }

    @Test
    void followsAReadingWithoutEverStepping() {
        Motion motion = Motion.restingAt(0);
        double slowest = Double.POSITIVE_INFINITY;
        double fastest = 0;
        for (int frame = 0; frame < 1200; frame++) {
            int words = (int) (frame * FRAME * 100 / 60);
            motion = Later.after(motion, to(words * PITCH / 6), FRAME, PITCH);
            if (frame > 180) {
                slowest = Math.min(slowest, motion.speed());
                fastest = Math.max(fastest, motion.speed());
            }
        }
        double even = PITCH * 100 / 60 / 6;
        assertThat(slowest).isGreaterThan(0.4 * even);
        assertThat(fastest).isLessThan(1.9 * even);
    }

    @Test
    void doesNotDependOnHowOftenPicturesAreDrawn() {
        Motion often = Motion.restingAt(0);
        Motion seldom = Motion.restingAt(0);
        for (int i = 0; i < 120; i++) {
            often = Later.after(often, to(70), 1.0 / 120, PITCH);
        }
        for (int i = 0; i < 30; i++) {
            seldom = Later.after(seldom, to(70), 1.0 / 30, PITCH);
        }
        assertThat(often.at()).isCloseTo(seldom.at(), within(0.5));
    }

    @Test
    void aNewJumpDoesNotBrightenDimText() {
        Motion motion = Motion.restingAt(0);
        for (double t = 0; t < Motion.DIM_SECONDS / 2; t += FRAME) {
            motion = Later.after(motion, to(5000), FRAME, PITCH);
        }
        double dim = motion.veil();
        assertThat(dim).isPositive();
        assertThat(Later.after(motion, to(9000), FRAME, PITCH).veil()).isGreaterThanOrEqualTo(dim);
    }

    @Test
    void aNewJumpJustBeforeTheTextIsReplacedShowsTheNewPlace() {
        Motion motion = Motion.restingAt(0);
        while (motion.leap() < Motion.DIM_SECONDS - FRAME) {
            motion = Later.after(motion, to(5000), FRAME, PITCH);
        }
        assertThat(motion.at()).isZero();
        Motion exchanged = Later.after(motion, to(9000), 2 * FRAME, PITCH);
        assertThat(exchanged.leap()).isGreaterThan(Motion.DIM_SECONDS);
        assertThat(exchanged.at()).isBetween(9000 - 1.25 * PITCH, 9000.0);
    }

    private static Aim to(double height) {
        return new Aim().lead(height, 0, 0, true, false);
    }
}
