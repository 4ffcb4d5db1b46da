package org.bookholder.course.shoot;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.course.LessonKind;
import org.bookholder.course.ReadingOrder;
import org.bookholder.course.Shooting;
import org.junit.jupiter.api.Test;

/** In which order lessons are recorded, and what is said when that changes. */
final class ReadingOrderTest {
    private static final LocalDate FIRST = LocalDate.of(2027, 3, 9);
    private static final Terms TERMS =
            new Terms(Duration.ofMinutes(30), Duration.ofMinutes(35), Duration.ofMinutes(10), Duration.ofMinutes(150));

    @Test
    void lessonsOfOneKindAreReadOneAfterAnotherTheHardestFirst() {
        SessionPlan plan = plan(
                ReadingOrder.FREE,
                1,
                300,
                work(1, 10, 1, LessonKind.SLIDES),
                work(2, 10, 2, LessonKind.PRESENTER),
                work(3, 10, 5, LessonKind.SLIDES),
                work(4, 10, 3, LessonKind.PRESENTER));
        assertThat(lessons(plan)).containsExactly(List.of(4, 2, 3, 1));
        assertThat(plan.sessions().get(0).kinds()).isEqualTo(2);
    }

    @Test
    void oneSetUpADayIsPreferredWhereItCostsNothing() {
        SessionPlan plan = plan(
                ReadingOrder.FREE,
                2,
                90,
                work(1, 25, 0, LessonKind.SLIDES),
                work(2, 25, 0, LessonKind.PRESENTER),
                work(3, 25, 0, LessonKind.SLIDES),
                work(4, 25, 0, LessonKind.PRESENTER));
        assertThat(lessons(plan)).containsExactly(List.of(2, 4), List.of(1, 3));
    }

    @Test
    void theCoursesOrderIsKeptFromDayToDayAndWithinADay() {
        RecordingTask[] works = {
            work(1, 20, 0, LessonKind.SLIDES),
            work(2, 40, 9, LessonKind.PRESENTER),
            work(3, 20, 5, LessonKind.PRESENTER)
        };
        assertThat(lessons(plan(ReadingOrder.KEPT, 3, 90, works))).containsExactly(List.of(1), List.of(2), List.of(3));
        assertThat(lessons(plan(ReadingOrder.FREE, 3, 90, works))).hasSize(2);
    }

    @Test
    void theHardestLessonsComeOnTheFirstDays() {
        SessionPlan plan = plan(
                ReadingOrder.HARD_EARLY,
                3,
                60,
                work(1, 25, 1, LessonKind.PRESENTER),
                work(2, 25, 9, LessonKind.PRESENTER),
                work(3, 25, 5, LessonKind.PRESENTER));
        assertThat(lessons(plan)).containsExactly(List.of(2), List.of(3), List.of(1));
    }

    @Test
    void aLostDaySaysWhatMoved() {
        List<RecordingTask> works = List.of(work(1, 25, 0, LessonKind.PRESENTER), work(2, 25, 0, LessonKind.PRESENTER));
        Shooting shooting = shooting(3, 60, ReadingOrder.FREE);
        LocalDate today = FIRST.plusDays(1);
        SessionPlan now = ChosenDays.plan(works, shooting, TERMS, today);
        PlanChange change = PlanChange.byLostDays(
                        ChosenDays::plan, works, shooting, TERMS, Optional.empty(), today, now)
                .orElseThrow();
        assertThat(change.sentences(name -> "Lesson " + name.substring(1)))
                .containsExactly(
                        "Nothing was recorded on 2027-03-09. So these lessons moved:",
                        "Lesson 1: 2027-03-10 instead of 2027-03-09",
                        "Lesson 2: 2027-03-11 instead of 2027-03-10",
                        "The last recording day is 2027-03-11 instead of 2027-03-10.");

        assertThat(PlanChange.byLostDays(ChosenDays::plan, works, shooting, TERMS, Optional.of(FIRST), today, now))
                .as("something was recorded on that day")
                .isEmpty();
        assertThat(PlanChange.lostDays(shooting, Optional.empty(), FIRST)).isEmpty();
        LocalDate late = FIRST.plusDays(2);
        SessionPlan tooFew = ChosenDays.plan(works, shooting, TERMS, late);
        assertThat(PlanChange.byLostDays(ChosenDays::plan, works, shooting, TERMS, Optional.empty(), late, tooFew)
                        .orElseThrow()
                        .sentences(name -> name))
                .contains("l2: was to be recorded on 2027-03-10; no day has room for it any more");
    }

    @Test
    void longerDaysAreAdvisedOnlyWhereTheyHoldMore() {
        RecordingTask[] works = new RecordingTask[12];
        for (int i = 0; i < works.length; i++) {
            works[i] = work(i + 1, 30, 0, LessonKind.PRESENTER);
        }
        assertThat(plan(ReadingOrder.FREE, 1, 14 * 60, works).why())
                .singleElement()
                .asString()
                .doesNotContain("more hours");
        assertThat(plan(ReadingOrder.FREE, 1, 100, works).why())
                .singleElement()
                .asString()
                .contains("more hours");
    }

    private static SessionPlan plan(ReadingOrder order, int days, int minutes, RecordingTask... works) {
        Terms terms = TERMS.with(order);
        Shooting shooting = shooting(days, minutes, order);
        SessionPlan plan = ChosenDays.plan(List.of(works), shooting, terms, FIRST);
        assertThat(PlanRules.broken(plan, List.of(works), shooting, terms)).isEmpty();
        return plan;
    }

    private static Shooting shooting(int days, int minutes, ReadingOrder order) {
        List<Shooting.Day> given = new ArrayList<>();
        for (int i = 0; i < days; i++) {
            given.add(new Shooting.Day(FIRST.plusDays(i), LocalTime.of(10, 0), Duration.ofMinutes(minutes)));
        }
        return new Shooting(given, TERMS.setUp(), Optional.empty(), order);
    }

    private static RecordingTask work(int lesson, int minutes, double hardness, LessonKind kind) {
        return new RecordingTask(lesson, "l" + lesson, "whole", Duration.ofMinutes(minutes), hardness, kind);
    }

    private static List<List<Integer>> lessons(SessionPlan plan) {
        return plan.sessions().stream()
                .map(session ->
                        session.works().stream().map(RecordingTask::lesson).toList())
                .toList();
    }
}
