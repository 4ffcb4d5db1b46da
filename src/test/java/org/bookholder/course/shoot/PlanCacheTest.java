package org.bookholder.course.shoot;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.bookholder.course.Shooting;
import org.bookholder.course.Shooting.Day;
import org.bookholder.fatigue.FatigueLimits;
import org.junit.jupiter.api.Test;

final class PlanCacheTest {
    private static final LocalDate TODAY = LocalDate.of(2027, 3, 1);
    private static final Duration SET_UP = Duration.ofMinutes(30);

    private final AtomicInteger plannings = new AtomicInteger();
    private final PlanCache cache = new PlanCache((works, shooting, terms, today) -> {
        plannings.incrementAndGet();
        return ChosenDays.plan(works, shooting, terms, today);
    });

    @Test
    void thePlanForTheSameArgumentsIsMadeOnce() {
        SessionPlan first = cache.plan(works(20), shooting(2), terms(SET_UP), TODAY);
        SessionPlan again = cache.plan(works(20), shooting(2), terms(SET_UP), TODAY);

        assertThat(plannings).hasValue(1);
        assertThat(again).isSameAs(first).isEqualTo(ChosenDays.plan(works(20), shooting(2), terms(SET_UP), TODAY));
    }

    @Test
    void itIsMadeAnewForOtherWorkDaysLimitsOrToday() {
        cache.plan(works(20), shooting(2), terms(SET_UP), TODAY);
        assertThat(cache.plan(works(21), shooting(2), terms(SET_UP), TODAY))
                .isEqualTo(ChosenDays.plan(works(21), shooting(2), terms(SET_UP), TODAY));
        assertThat(cache.plan(works(21), shooting(3), terms(SET_UP), TODAY))
                .isEqualTo(ChosenDays.plan(works(21), shooting(3), terms(SET_UP), TODAY));
        Terms longer = terms(SET_UP.plusMinutes(5));
        assertThat(cache.plan(works(21), shooting(3), longer, TODAY))
                .isEqualTo(ChosenDays.plan(works(21), shooting(3), longer, TODAY));
        assertThat(cache.plan(works(21), shooting(3), longer, TODAY.plusDays(1)))
                .isEqualTo(ChosenDays.plan(works(21), shooting(3), longer, TODAY.plusDays(1)));
        assertThat(plannings).hasValue(5);
    }

    private static List<RecordingTask> works(int minutes) {
        return List.of(
                new RecordingTask(1, "hub", "whole", Duration.ofMinutes(minutes), 1),
                new RecordingTask(2, "rim", "whole", Duration.ofMinutes(25), 2));
    }

    private static Shooting shooting(int hours) {
        Day day = new Day(TODAY, LocalTime.of(9, 0), Duration.ofHours(hours));
        Day next = new Day(TODAY.plusDays(1), LocalTime.of(9, 0), Duration.ofHours(hours));
        return new Shooting(List.of(day, next), SET_UP, Optional.empty());
    }

    private static Terms terms(Duration setUp) {
        return Terms.of(FatigueLimits.defaults(), setUp);
    }
}
