package org.bookholder.app.home;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.bookholder.testing.FakeClock;
import org.junit.jupiter.api.Test;

final class IdleTimerTest {
    private final FakeClock clock = new FakeClock();
    private final IdleTimer timer = new IdleTimer(clock);

    @Test
    void nobodyNeedsTheProgramSomeMinutesAfterTheLastPageWasThere() {
        clock.pass(IdleTimer.ALONE);
        assertThat(timer.over()).isFalse();
        timer.needed();
        clock.pass(IdleTimer.ALONE);
        assertThat(timer.over()).isFalse();
        clock.pass(Duration.ofNanos(1));
        assertThat(timer.over()).isTrue();
    }
}
