package org.bookholder.runtime;

import static org.assertj.core.api.Assertions.assertThat;

import org.bookholder.runtime.EndDeadline.Step;
import org.bookholder.testing.FakeClock;
import org.junit.jupiter.api.Test;

final class EndDeadlineTest {
    private final FakeClock clock = new FakeClock();

    @Test
    void hurriesAndThenStopsAReadingThatDoesNotEnd() {
        clock.passMillis(5_000);
        EndDeadline deadline = new EndDeadline(clock);
        assertThat(deadline.step()).isEqualTo(Step.WAIT);
        clock.passMillis(19_999);
        assertThat(deadline.step()).isEqualTo(Step.WAIT);
        clock.passMillis(1);
        assertThat(deadline.step()).isEqualTo(Step.HURRY);
        clock.passMillis(9_999);
        assertThat(deadline.step()).isEqualTo(Step.HURRY);
        clock.passMillis(1);
        assertThat(deadline.step()).isEqualTo(Step.STOP);
    }
}
