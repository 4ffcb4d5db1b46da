package org.bookholder.course.shoot;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.bookholder.course.Shooting;
import org.bookholder.course.Shooting.Day;
import org.bookholder.fatigue.FatigueLimits;
import org.junit.jupiter.api.Test;

final class ChosenDaysTest {
    private static final LocalDate TODAY = LocalDate.of(2027, 2, 1);
    private static final LocalDate FIRST = TODAY.plusDays(1);
    private static final LocalDate SECOND = TODAY.plusDays(2);
    private static final Terms TERMS = Terms.of(FatigueLimits.defaults(), Duration.ofMinutes(30));

    @Test
    void aLessonIsReadOnTheDayOnWhichItWasPut() {
        SessionPlan plan = plan(works(3, 20), day(FIRST, 120), day(SECOND, 120, "lesson-1"));

        assertThat(plan.day(1)).contains(SECOND);
        assertThat(plan.day(2)).contains(FIRST);
        assertThat(plan.day(3)).contains(FIRST);
        assertThat(plan.sessions())
                .extracting(PlannedSession::date)
                .containsExactly(Optional.of(FIRST), Optional.of(SECOND));
        assertThat(plan.left()).isEmpty();
        assertThat(plan.why()).isEmpty();
    }

    @Test
    void otherLessonsComeThereOnlyWhenTheOtherDaysAreFull() {
        SessionPlan plan = plan(works(4, 20), day(FIRST, 80), day(SECOND, 120, "lesson-1"));

        assertThat(plan.day(2)).contains(FIRST);
        assertThat(plan.day(3)).contains(FIRST);
        assertThat(plan.day(4)).contains(SECOND);
        assertThat(plan.left()).isEmpty();
    }

    @Test
    void whatDoesNotFitOnItsDayIsNamed() {
        SessionPlan plan = plan(works(3, 30), day(FIRST, 70, "lesson-1", "lesson-3"), day(SECOND, 120));

        assertThat(plan.day(1)).contains(FIRST);
        assertThat(plan.left()).extracting(RecordingTask::name).containsExactly("lesson-3");
        assertThat(plan.why())
                .containsExactly("lesson-3 does not fit on 2027-02-02 beside what else you put there; put it on another"
                        + " day");
    }

    @Test
    void whereAllDaysHaveLessonsOfTheirOwnTheRestIsNamed() {
        SessionPlan plan = plan(works(3, 30), day(FIRST, 70, "lesson-2"));

        assertThat(plan.day(2)).contains(FIRST);
        assertThat(plan.left()).extracting(RecordingTask::name).containsExactly("lesson-1", "lesson-3");
        assertThat(plan.why()).singleElement().asString().contains("have no more room");
    }

    @Test
    void aLessonThatStandsOnTwoDaysIsPlannedOnce() {
        SessionPlan plan = plan(works(1, 20), day(FIRST, 120, "lesson-1"), day(SECOND, 120, "lesson-1"));

        assertThat(plan.sessions())
                .singleElement()
                .extracting(PlannedSession::date)
                .isEqualTo(Optional.of(FIRST));
        assertThat(plan.left()).isEmpty();
    }

    @Test
    void aDayThatIsOverHoldsNothing() {
        SessionPlan plan = plan(works(2, 20), day(TODAY.minusDays(1), 120, "lesson-1"), day(SECOND, 120));

        assertThat(plan.day(1)).contains(SECOND);
        assertThat(plan.over()).isEqualTo(1);
    }

    @Test
    void whatIsRecordedLeavesItsDayFree() {
        SessionPlan plan = plan(works(1, 20), day(FIRST, 120), day(SECOND, 120, "lesson-9"));

        assertThat(plan.day(1)).contains(FIRST);
        assertThat(plan.free()).containsExactly(SECOND);
    }

    private static SessionPlan plan(List<RecordingTask> works, Day... days) {
        return ChosenDays.plan(works, new Shooting(List.of(days), TERMS.setUp(), Optional.empty()), TERMS, TODAY);
    }

    private static Day day(LocalDate date, int minutes, String... lessons) {
        return new Day(date, LocalTime.of(10, 0), Duration.ofMinutes(minutes), List.of(lessons));
    }

    private static List<RecordingTask> works(int count, int minutes) {
        return IntStream.rangeClosed(1, count)
                .mapToObj(n -> new RecordingTask(n, "lesson-" + n, "whole", Duration.ofMinutes(minutes), 0))
                .toList();
    }
}
