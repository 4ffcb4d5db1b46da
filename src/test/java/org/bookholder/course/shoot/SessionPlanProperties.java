package org.bookholder.course.shoot;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
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
        List<RecordingTask> works = works(lessons);
        Shooting shooting = new Shooting(given(days), minutes(setUp), Optional.empty());

        SessionPlan plan = SessionPlanner.plan(works, shooting, terms, FIRST);

        assertThat(PlanRules.broken(plan, works, shooting, terms)).isEmpty();
    }

    /** On given days as much is placed as can be, as early, and in as few sessions: all ways are tried beside it. */
    @Property(tries = 200)
    void noWayOfPlacingLessonsIsBetter(
            @ForAll @Size(min = 1, max = 6) List<@IntRange(min = 5, max = 100) Integer> lessons,
            @ForAll @Size(min = 1, max = 3) List<@IntRange(min = 100, max = 240) Integer> days) {
        Terms terms = new Terms(minutes(20), minutes(35), minutes(10), minutes(120));
        List<RecordingTask> works = works(lessons);
        Shooting shooting = new Shooting(given(days), minutes(20), Optional.empty());

        SessionPlan plan = SessionPlanner.plan(works, shooting, terms, FIRST);

        if (plan.sessions().stream()
                .flatMap(session -> session.works().stream())
                .allMatch(w -> w.what().equals("whole"))) {
            List<PlannedSession> sessions = plan.sessions();
            Optional<LocalDate> last = sessions.isEmpty()
                    ? Optional.empty()
                    : sessions.get(sessions.size() - 1).date();
            assertThat(new Placed(
                            SessionPlanner.sum(plan.left()).toMinutes(),
                            last.map(day -> (int) ChronoUnit.DAYS.between(FIRST, day))
                                    .orElse(-1),
                            sessions.size()))
                    .isEqualTo(best(works, given(days), terms));
        }
    }

    private record Placed(long leftMinutes, int lastDay, int sessions) implements Comparable<Placed> {
        private static final Comparator<Placed> BETTER = Comparator.comparingLong(Placed::leftMinutes)
                .thenComparingInt(Placed::lastDay)
                .thenComparingInt(Placed::sessions);

        @Override
        public int compareTo(Placed other) {
            return BETTER.compare(this, other);
        }
    }

    /** By trying every way, one day for each work, or none. */
    private static Placed best(List<RecordingTask> works, List<Day> days, Terms terms) {
        Placed best = new Placed(Long.MAX_VALUE, 0, 0);
        int ways = (int) Math.pow(days.size() + 1, works.size());
        for (int way = 0; way < ways; way++) {
            List<List<RecordingTask>> placed = new ArrayList<>();
            for (int day = 0; day <= days.size(); day++) {
                placed.add(new ArrayList<>());
            }
            int rest = way;
            for (RecordingTask work : works) {
                placed.get(rest % (days.size() + 1)).add(work);
                rest /= days.size() + 1;
            }
            List<RecordingTask> left = placed.remove(days.size());
            int last = placed.size() - 1;
            while (last >= 0 && placed.get(last).isEmpty()) {
                last--;
            }
            Placed one = new Placed(SessionPlanner.sum(left).toMinutes(), last, (int)
                    placed.stream().filter(day -> !day.isEmpty()).count());
            if (one.compareTo(best) < 0 && fits(placed, days, terms)) {
                best = one;
            }
        }
        return best;
    }

    private static boolean fits(List<List<RecordingTask>> placed, List<Day> days, Terms terms) {
        for (int day = 0; day < days.size(); day++) {
            List<RecordingTask> sorted = new ArrayList<>(placed.get(day));
            sorted.sort(Comparator.comparingDouble(RecordingTask::hardness)
                    .reversed()
                    .thenComparingInt(RecordingTask::lesson));
            Day d = days.get(day);
            if (!sorted.isEmpty()
                    && !PlannedSession.of(Optional.of(d.date()), d.from(), d.length(), sorted, terms)
                            .fits(terms)) {
                return false;
            }
        }
        return true;
    }

    private static List<RecordingTask> works(List<Integer> lengths) {
        List<RecordingTask> works = new ArrayList<>();
        for (int length : lengths) {
            works.add(new RecordingTask(works.size() + 1, "l" + works.size(), "whole", minutes(length), length % 7));
        }
        return works;
    }

    private static List<Day> given(List<Integer> lengths) {
        List<Day> given = new ArrayList<>();
        for (int length : lengths) {
            given.add(new Day(FIRST.plusDays(given.size()), LocalTime.of(9, 0), minutes(length)));
        }
        return given;
    }

    private static Duration minutes(int minutes) {
        return Duration.ofMinutes(minutes);
    }
}
