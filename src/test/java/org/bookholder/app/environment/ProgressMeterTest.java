package org.bookholder.app.environment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

final class ProgressMeterTest {
    private static final long SECOND = 1_000_000_000L;

    private final AtomicLong now = new AtomicLong(7 * SECOND);
    private final List<Progress> told = new ArrayList<>();
    private final ProgressMeter meter = new ProgressMeter(now::get, told::add);

    @Test
    void expectsTheRestToTakeAsLongAsTheFirstPart() {
        now.addAndGet(15 * SECOND);
        meter.reached("film", 0.1);
        assertThat(told).containsExactly(new Progress("film", 0.1, OptionalDouble.of(135)));
    }

    @Test
    void doesNotGuessFromTheFirstMoments() {
        now.addAndGet(SECOND);
        meter.reached("film", 0.01);
        assertThat(told).containsExactly(new Progress("film", 0.01, OptionalDouble.empty()));
    }

    @Test
    void neverExceedsTheWhole() {
        now.addAndGet(SECOND);
        meter.reached("film", 1.2);
        meter.reached("film", -0.1);
        assertThat(told).extracting(Progress::done).containsExactly(1.0, 0.0);
    }
}
