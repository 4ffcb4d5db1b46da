package org.bookholder.view.motion;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.bookholder.view.Later;

/** Bounds that hold whatever the voice does, in virtual time; rows of 100 pixels. */
final class MotionProperties {
    private static final double PITCH = 100;
    private static final double STEP = 1.0 / 240;

    /** A critically damped glide over d pixels is never faster than w d / e; the longest glide is of 3.2 rows. */
    private static final double MOST_SPEED = 2 * Motion.QUICK * Motion.LEAP_ROWS * PITCH / Math.E;

    private static final double MOST_ACCELERATION = 4 * Motion.QUICK * Motion.QUICK * Motion.LEAP_ROWS * PITCH;

    @Property(tries = 300)
    void speedAndAccelerationAreBoundedWhileTheTextIsVisible(
            @ForAll @Size(min = 1, max = 12) List<@DoubleRange(min = 0, max = 20_000) Double> aims,
            @ForAll @DoubleRange(min = 0.02, max = 1.2) double pause) {
        Motion motion = Motion.restingAt(0);
        for (double aim : aims) {
            for (double t = 0; t < pause; t += STEP) {
                Motion next = Later.after(motion, to(aim), STEP, PITCH);
                if (next.veil() < 0.98) {
                    assertThat(Math.abs(next.speed())).isLessThan(MOST_SPEED);
                    assertThat(Math.abs(next.at() - motion.at())).isLessThan(MOST_SPEED * STEP * 1.01);
                    assertThat(Math.abs(next.speed() - motion.speed()) / STEP).isLessThan(MOST_ACCELERATION);
                }
                motion = next;
            }
        }
    }

    @Property(tries = 300)
    void comesToRestAtTheLastAim(
            @ForAll @Size(min = 1, max = 8) List<@DoubleRange(min = 0, max = 20_000) Double> aims,
            @ForAll @DoubleRange(min = 0.01, max = 0.6) double pause) {
        Motion motion = Motion.restingAt(0);
        for (double aim : aims) {
            motion = Later.after(motion, to(aim), pause, PITCH);
        }
        double last = aims.get(aims.size() - 1);
        for (int i = 0; i < 8; i++) {
            motion = Later.after(motion, to(last), 1, PITCH);
        }
        assertThat(Math.abs(motion.at() - last)).isLessThan(0.5);
        assertThat(Math.abs(motion.speed())).isLessThan(0.5);
        assertThat(motion.veil()).isZero();
    }

    @Property(tries = 300)
    void neverMovesBackWhileTheReadingContinues(
            @ForAll @Size(min = 4, max = 40) List<@DoubleRange(min = 0, max = 0.3) Double> rowsPerWord,
            @ForAll @DoubleRange(min = 0.15, max = 0.9) double secondsPerWord) {
        Motion motion = Motion.restingAt(0);
        double aim = 0;
        for (double rows : rowsPerWord) {
            aim += rows * PITCH;
            for (double t = 0; t < secondsPerWord; t += STEP) {
                motion = Later.after(motion, to(aim), STEP, PITCH);
                assertThat(motion.speed()).isGreaterThan(-1e-6);
                assertThat(motion.at()).isLessThan(aim + 1e-6);
            }
        }
    }

    @Property(tries = 200)
    void theTextDimsAndBrightensGradually(
            @ForAll @Size(min = 1, max = 12) List<@DoubleRange(min = 0, max = 20_000) Double> aims,
            @ForAll @DoubleRange(min = 0.02, max = 0.5) double pause) {
        Motion motion = Motion.restingAt(0);
        double mostChange = 1.6 / Motion.DIM_SECONDS * STEP;
        for (double aim : aims) {
            for (double t = 0; t < pause; t += STEP) {
                Motion next = Later.after(motion, to(aim), STEP, PITCH);
                assertThat(Math.abs(next.veil() - motion.veil())).isLessThan(mostChange);
                motion = next;
            }
        }
    }

    private static Aim to(double height) {
        return new Aim().lead(height, 0, 0, true, false);
    }
}
