package org.bookholder.course.shoot;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.bookholder.course.Shooting;
import org.bookholder.course.Shooting.Day;
import org.bookholder.course.shoot.PlannedSession.Slot;
import org.bookholder.course.shoot.PlannedSession.Use;
import org.bookholder.fatigue.FatigueLimits;
import org.junit.jupiter.api.Test;

final class SessionPlannerTest {
    private static final LocalDate TODAY = LocalDate.of(2027, 2, 1);
    private static final Terms TERMS = Terms.of(FatigueLimits.defaults(), Duration.ofMinutes(30));

    @Test
    void theTermsAreThoseOfTheFatigueLimits() {
        assertThat(TERMS)
                .isEqualTo(new Terms(
                        Duration.ofMinutes(30), Duration.ofMinutes(35), Duration.ofMinutes(10), Duration.ofHours(2)));
    }

    @Test
    void breaksComeBetweenLessonsBeforeTheVoiceTires() {
        SessionPlan plan = plan(works(12, 12, 12, 12), days(180));
        assertThat(plan.sessions()).hasSize(1);
        assertThat(plan.sessions().get(0).slots())
                .extracting(Slot::use)
                .containsExactly(Use.SET_UP, Use.READING, Use.READING, Use.BREAK, Use.READING, Use.READING);
        assertThat(plan.sessions().get(0).length()).isEqualTo(Duration.ofMinutes(30 + 4 * 12 + 10));
    }

    @Test
    void theHardestLessonOfASessionComesFirst() {
        List<RecordingTask> works = new ArrayList<>(works(10, 10));
        works.add(new RecordingTask(3, "hard", "whole", Duration.ofMinutes(10), 5));
        assertThat(plan(works, days(180)).sessions().get(0).works())
                .extracting(RecordingTask::name)
                .containsExactly("hard", "lesson-1", "lesson-2");
    }

    @Test
    void lessonsStayInOrderFromDayToDayAndWhole() {
        SessionPlan plan = plan(works(30, 30, 30, 30), days(120, 120));
        assertThat(plan.left()).isEmpty();
        assertThat(plan.day(2)).contains(LocalDate.of(2027, 2, 2));
        assertThat(plan.day(3)).contains(LocalDate.of(2027, 2, 3));
    }

    @Test
    void aLessonLongerThanAnySessionIsSplit() {
        SessionPlan plan = plan(works(150), days(180, 180));
        assertThat(plan.sessions())
                .flatExtracting(PlannedSession::works)
                .extracting(RecordingTask::what)
                .containsExactly("part 1 of 2", "part 2 of 2");
        assertThat(plan.left()).isEmpty();
    }

    @Test
    void changesTheOrderOnlyIfNecessary() {
        // In order: 20 on the first day, 30 on the second, and 12 has room beside neither but beside 20.
        SessionPlan plan = plan(works(20, 30, 12), days(62, 62));
        assertThat(plan.left()).isEmpty();
    }

    @Test
    void namesTheDaysThatAreNotNeeded() {
        SessionPlan plan = plan(works(20, 30), days(180, 180, 180));
        assertThat(plan.free()).containsExactly(LocalDate.of(2027, 2, 3), LocalDate.of(2027, 2, 4));
        assertThat(plan(works(20, 30), List.of()).free()).isEmpty();
    }

    @Test
    void saysHowMuchIsMissing() {
        SessionPlan plan = plan(works(60, 60), days(100));
        assertThat(plan.left()).extracting(RecordingTask::name).containsExactly("lesson-2");
        assertThat(plan.why())
                .containsExactly(
                        "there are 2 h 00 to record, and the days given hold at most 1 h 00 of it, whole lessons and "
                                + "with their breaks; add a day, of 1 h 40 or more, or give the days more hours");
    }

    /** In 80 minutes two of 35 are read, or three of 18, each with a break between; so there is time, and no room. */
    @Test
    void saysHowManyLessonsTheDaysHold() {
        int[] lessons = new int[19];
        Arrays.fill(lessons, 18);
        lessons[4] = 35;
        lessons[9] = 35;
        SessionPlan plan = plan(works(lessons), days(110, 110, 110, 110, 110, 110));
        assertThat(plan.left()).isNotEmpty();
        assertThat(plan.why())
                .singleElement()
                .asString()
                .startsWith(
                        "there are 19 lessons or parts to record, and the days given hold at most 18, whole and with"
                                + " their breaks; add a day, of ");
    }

    @Test
    void saysThatNoWayWasFound() {
        SessionPlan plan = plan(works(15, 35, 30, 10, 25), days(100, 100));
        assertThat(plan.left()).extracting(RecordingTask::name).containsExactly("lesson-4");
        assertThat(plan.why())
                .containsExactly(
                        "the time would do, but no way was found to fit whole lessons into the days (not all ways were"
                                + " tried: there may be one); add a day, of 40 min or more, or give the days more hours");
    }

    /** A long day far off holds everything, and four short ones soon: the course is recorded soon. */
    @Test
    void finishesEarlyRatherThanInFewSessions() {
        List<Day> days = new ArrayList<>(days(62, 62, 62, 62));
        days.add(new Day(TODAY.plusMonths(3), LocalTime.of(10, 0), Duration.ofHours(5)));
        SessionPlan plan = plan(works(30, 30, 30, 30), days);
        assertThat(plan.left()).isEmpty();
        assertThat(plan.free()).containsExactly(TODAY.plusMonths(3));
    }

    @Test
    void sparesADayWhereTheLastLessonIsNotLaterForIt() {
        // 30 and 20 fill the second day; on the first only one of them has room.
        SessionPlan plan = plan(works(30, 20, 35), days(62, 110, 66));
        assertThat(plan.left()).isEmpty();
        assertThat(plan.sessions()).hasSize(2);
        assertThat(plan.free()).containsExactly(TODAY.plusDays(3));
    }

    @Test
    void aLongCourseIsPlacedOnDaysThatJustHoldIt() {
        // Each day holds 15, 20 and 25 minutes, two of them without a break; taken in order, 25 and 15 leave gaps.
        int[] lessons = new int[30];
        for (int i = 0; i < lessons.length; i++) {
            lessons[i] = new int[] {25, 15, 20}[i * 7 % 3];
        }
        SessionPlan plan = plan(works(lessons), days(100, 100, 100, 100, 100, 100, 100, 100, 100, 100));
        assertThat(plan.left()).isEmpty();
        assertThat(plan.why()).isEmpty();
    }

    @Test
    void partsOfALessonComeInTheirOrder() {
        SessionPlan plan = plan(works(250, 30, 45), days(150, 180, 120, 180));
        assertThat(plan.left()).isEmpty();
        assertThat(plan.sessions())
                .flatExtracting(PlannedSession::works)
                .filteredOn(work -> work.lesson() == 1)
                .extracting(RecordingTask::what)
                .containsExactly("part 1 of 3", "part 2 of 3", "part 3 of 3");
    }

    @Test
    void saysThatADayIsTooShort() {
        assertThat(plan(works(10), days(30)).why())
                .contains("2027-02-02 is too short to read anything after 30 min of set-up; give it more hours, or set"
                        + " up faster");
    }

    @Test
    void saysThatNoSessionIsLongEnough() {
        Terms slow =
                new Terms(Duration.ofHours(4), Duration.ofMinutes(35), Duration.ofMinutes(10), Duration.ofHours(2));
        Shooting shooting = new Shooting(List.of(), slow.setUp(), Optional.empty());
        assertThat(SessionPlanner.plan(works(10), shooting, slow, TODAY).why())
                .containsExactly("a session of 3 h 00 is too short to read anything after 4 h 00 of set-up; "
                        + "give it more hours, or set up faster");
    }

    @Test
    void saysThatTheDaysAreOver() {
        SessionPlan plan = SessionPlanner.plan(
                works(10), new Shooting(days(180), Duration.ZERO, Optional.empty()), TERMS, LocalDate.of(2028, 1, 1));
        assertThat(plan.why()).containsExactly("every recording day is over; add new days");
        assertThat(plan.left()).hasSize(1);
    }

    @Test
    void withoutDaysItTellsHowManySessionsItTakes() {
        SessionPlan plan = plan(works(60, 60, 60), List.of());
        assertThat(plan.sessions())
                .hasSize(2)
                .allMatch(session -> session.date().isEmpty());
        assertThat(plan.left()).isEmpty();
    }

    private static SessionPlan plan(List<RecordingTask> works, List<Day> days) {
        Shooting shooting = new Shooting(days, Duration.ofMinutes(30), Optional.empty());
        SessionPlan plan = SessionPlanner.plan(works, shooting, TERMS, TODAY);
        assertThat(PlanRules.broken(plan, works, shooting, TERMS)).isEmpty();
        return plan;
    }

    private static List<RecordingTask> works(int... minutes) {
        List<RecordingTask> works = new ArrayList<>();
        for (int length : minutes) {
            int number = works.size() + 1;
            works.add(new RecordingTask(number, "lesson-" + number, "whole", Duration.ofMinutes(length), 0));
        }
        return works;
    }

    private static List<Day> days(int... minutes) {
        List<Day> days = new ArrayList<>();
        for (int length : minutes) {
            days.add(new Day(TODAY.plusDays(days.size() + 1L), LocalTime.of(10, 0), Duration.ofMinutes(length)));
        }
        return days;
    }
}
