package org.bookholder.course.shoot;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.bookholder.course.Shooting;
import org.bookholder.course.Shooting.Day;

final class SessionPlanProperties {
    private static final LocalDate FIRST = LocalDate.of(2027, 2, 1);

    /** Whatever is asked for, the plan keeps its rules, and gives a reason for what it leaves out. */
    @Property(tries = 300)
    void everyPlanKeepsItsRules(
            @ForAll @Size(max = 9) List<@IntRange(min = 1, max = 300) Integer> lessons,
            @ForAll @Size(max = 5) List<@IntRange(min = 30, max = 600) Integer> days,
            @ForAll @IntRange(max = 90) int setUp,
            @ForAll @IntRange(min = 5, max = 60) int stretch,
            @ForAll @IntRange(min = 10, max = 200) int reading) {
        Terms terms = new Terms(minutes(setUp), minutes(stretch), minutes(10), minutes(reading));
        List<Work> works = new ArrayList<>();
        for (int length : lessons) {
            works.add(new Work(works.size() + 1, "l" + works.size(), "whole", minutes(length), length % 7));
        }
        List<Day> given = new ArrayList<>();
        for (int length : days) {
            given.add(new Day(FIRST.plusDays(given.size()), LocalTime.of(9, 0), minutes(length)));
        }
        Shooting shooting = new Shooting(given, minutes(setUp), Optional.empty());

        SessionPlan plan = SessionPlanner.plan(works, shooting, terms, FIRST);

        assertThat(PlanRules.broken(plan, works, shooting, terms)).isEmpty();
    }

    private static Duration minutes(int minutes) {
        return Duration.ofMinutes(minutes);
    }
}
