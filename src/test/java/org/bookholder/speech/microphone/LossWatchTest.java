package org.bookholder.speech.microphone;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

final class LossWatchTest {
    private static final int RATE = 48_000;
    private static final long TEN_MILLISECONDS = 10_000_000L;

    private final LossWatch watch = new LossWatch(RATE, 0, 0);
    private long nanos;
    private double received;

    /** Polls every 10 ms while {@code perPoll} samples come each time; returns what is reported lost. */
    private long run(double seconds, double perPoll) {
        long lost = 0;
        for (int i = 0; i < seconds * 100; i++) {
            nanos += TEN_MILLISECONDS;
            received += perPoll;
            lost += watch.check(nanos, Math.round(received), false);
        }
        return lost;
    }

    @Test
    void reportsNothingWhileAllSamplesArrive() {
        assertThat(run(600, 480)).isZero();
    }

    @Test
    void aDriftingClockIsNotALoss() {
        assertThat(run(3_600, 480 * 0.9995)).isZero();
        assertThat(run(3_600, 480 * 1.0005)).isZero();
    }

    @Test
    void reportsWhatADeviceDroppedOnceAndInFull() {
        run(60, 480);
        long lost = run(0.7, 0) + run(60, 480);
        assertThat(lost).isCloseTo(Math.round(0.7 * RATE), within(RATE / 100L));
        assertThat(run(60, 480)).isZero();
    }

    @Test
    void waitsForSamplesThatAreOnlyLate() {
        run(60, 480);
        long lost = run(0.7, 0);
        received += 0.7 * RATE;
        assertThat(lost + run(60, 480)).isZero();
    }

    /** On a machine that is held up, two looks may be a second apart, and each see less than has long been recorded. */
    @Test
    void waitsForSamplesAsLongAsSomebodyLooks() {
        run(60, 480);
        long lost = 0;
        for (int look = 0; look < 3; look++) {
            nanos += 1_100_000_000L;
            received += (look == 0 ? 0.9 : 1.1) * RATE;
            lost += watch.check(nanos, Math.round(received), false);
        }
        received += 0.2 * RATE;
        assertThat(lost + run(60, 480)).isZero();
    }

    @Test
    void doesNotWaitAfterAnOverrun() {
        run(60, 480);
        nanos += 7_000_000_000L;
        received += 5 * RATE;
        assertThat(watch.check(nanos, Math.round(received), true)).isCloseTo(2L * RATE, within(RATE / 100L));
    }
}
