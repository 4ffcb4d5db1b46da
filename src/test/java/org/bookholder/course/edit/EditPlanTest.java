package org.bookholder.course.edit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.bookholder.course.Costs;
import org.bookholder.course.Editing;
import org.bookholder.course.LessonKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class EditPlanTest {
    private static final LocalDate MONDAY = LocalDate.of(2027, 3, 1);

    /**
     * A university's course team gives 1, 5 and 16 hours of processing for a video of up to ten minutes (Crosslin, ed., Creating Online
     * Learning Experiences, ch. 10); more in proportion for a longer one is our reading of it.
     */
    @ParameterizedTest
    @CsvSource({
        "PRESENTER, 1, 1",
        "PRESENTER, 10, 1",
        "PRESENTER, 25, 2.5",
        "SLIDES, 4, 5",
        "SLIDES, 20, 10",
        "MOVING, 9.9, 16"
    })
    void aShortLessonTakesThePublishedHoursAndALongOneMore(LessonKind kind, double minutes, double hours) {
        assertThat(editing(10, 3, 0.2).hours(kind, minutes)).isCloseTo(hours, within(1e-9));
    }

    /** 24 lessons of 8 minutes, by the hours above. */
    @ParameterizedTest
    @CsvSource({"PRESENTER, 24, 0.8", "SLIDES, 120, 4", "MOVING, 384, 12.8"})
    void hoursAndWeeksComeFromTheLessons(LessonKind kind, double hours, double weeks) {
        Editing editing = editing(30, 99, 0);
        List<EditTask> tasks = new ArrayList<>();
        for (int i = 1; i <= 24; i++) {
            tasks.add(task("l" + i, editing.hours(kind, 8)));
        }
        EditPlan plan = EditPlan.of(tasks, editing, MONDAY, 1);
        assertThat(plan.weeks()).hasSize((int) Math.ceil(weeks));
        assertThat(plan.weeks().stream().mapToDouble(EditWeek::hours).sum()).isCloseTo(hours, within(1e-6));
    }

    @Test
    void neverExceedsTheLessonsPerWeekAndLeavesTheSlackFree() {
        EditPlan plan = EditPlan.of(tasks(1, 1, 1, 1, 1), editing(10, 3, 0.2), MONDAY, 1);
        assertThat(plan.weeks())
                .containsExactly(
                        new EditWeek(MONDAY, List.of("l1", "l2", "l3"), "", 3, 2),
                        new EditWeek(MONDAY.plusWeeks(1), List.of("l4", "l5"), "", 2, 2));
        assertThat(plan.ends(MONDAY)).isEqualTo(LocalDate.of(2027, 3, 14));
    }

    @Test
    void aLongEditGoesOverSeveralWeeks() {
        EditPlan plan = EditPlan.of(tasks(20, 2), editing(10, 3, 0.2), MONDAY, 1);
        assertThat(plan.weeks()).extracting(EditWeek::begun).containsExactly("l1", "l1", "");
        assertThat(plan.weeks().get(2).finished()).containsExactly("l1", "l2");
        assertThat(List.of(plan.finishesRest(0), plan.finishesRest(1), plan.finishesRest(2)))
                .containsExactly(false, false, true);
        assertThat(EditText.of(tasks(20, 2), editing(10, 3, 0.2), MONDAY))
                .anyMatch(row -> row.contains("rest of l1, l2 "));
    }

    @Test
    void nothingIsEditedBeforeItIsRecorded() {
        Editing editing = editing(5, 3, 0.2);
        List<EditTask> tasks =
                List.of(task("l1", 4), recorded("l2", 4, MONDAY.plusDays(9)), recorded("l3", 2, MONDAY.plusDays(7)));
        EditPlan plan = EditPlan.of(tasks, editing, MONDAY, 1);
        assertThat(plan.weeks())
                .extracting(EditWeek::finished)
                .containsExactly(List.of("l1"), List.of(), List.of("l2"), List.of("l3"));
        assertThat(EditText.of(tasks, editing, MONDAY)).anyMatch(row -> row.contains("(waits for the recording)"));

        // Where no day is set to begin, it is the one after the first recording.
        Editing open = new Editing(Optional.empty(), 5, 3, 0.2, editing.rates());
        assertThat(BurnDown.of(tasks.subList(1, 3), open, MONDAY).from()).isEqualTo(MONDAY.plusDays(8));
        assertThat(BurnDown.of(tasks, open, MONDAY).from()).isEqualTo(MONDAY);
    }

    @Test
    void weeksOfWaitingAreOneRow() {
        List<EditTask> tasks = List.of(recorded("l1", 4, MONDAY.plusWeeks(9)));
        assertThat(EditText.of(tasks, editing(5, 3, 0.2), MONDAY))
                .filteredOn(row -> row.contains("(waits for the recording, 10 weeks)"))
                .hasSize(1);
    }

    private static EditTask recorded(String name, double hours, LocalDate day) {
        return new EditTask(name, 8, hours, Optional.empty(), OptionalDouble.empty(), Optional.of(day));
    }

    @Test
    void theForecastFollowsTheHoursThatEditsReallyTook() {
        List<EditTask> tasks = new ArrayList<>(tasks(4, 4, 4, 4));
        Editing editing = editing(5, 3, 0.2);
        assertThat(BurnDown.of(tasks, editing, MONDAY).forecast())
                .contains(MONDAY.plusWeeks(4).minusDays(1));

        tasks.set(
                0, new EditTask("l1", 40, 4, Optional.of(MONDAY.plusDays(6)), OptionalDouble.of(8), Optional.empty()));
        for (int i = 1; i < 4; i++) {
            tasks.set(i, left("l" + (i + 1), 4, 8));
        }
        BurnDown slower = BurnDown.of(tasks, editing, MONDAY.plusWeeks(1));
        assertThat(slower.speed()).isEqualTo(1);
        assertThat(slower.speedFrom()).isEqualTo("by the hours that the finished edits took");
        assertThat(slower.forecast()).contains(MONDAY.plusWeeks(1 + 6).minusDays(1));
        assertThat(slower.planned()).containsExactly(4, 3, 2, 1, 0);
        assertThat(slower.real()).containsExactly(4, 3);
    }

    private static EditTask left(String name, double hours, double left) {
        return new EditTask(name, 8, hours, left, Optional.empty(), OptionalDouble.empty(), false, Optional.empty());
    }

    @Test
    void whatHasNoRecordingDayStandsInNoWeekAndIsNamed() {
        EditTask waits = new EditTask("l2", 8, 4, 4, Optional.empty(), OptionalDouble.empty(), true, Optional.empty());
        List<EditTask> tasks = List.of(task("l1", 4), waits);
        BurnDown burnDown = BurnDown.of(tasks, editing(5, 3, 0.2), MONDAY);
        assertThat(burnDown.planned()).containsExactly(2, 1);
        assertThat(burnDown.forecast()).isEmpty();
        assertThat(text(tasks, MONDAY))
                .contains("In none of these weeks, because it has no recording day yet: l2.")
                .contains("No forecast: 1 lesson without a recording day.");
    }

    @Test
    void theForecastFollowsWhatWasFinishedWhereHoursAreNotKnown() {
        List<EditTask> tasks = new ArrayList<>(tasks(4, 4, 4));
        tasks.set(
                0,
                new EditTask("l1", 40, 4, Optional.of(MONDAY.plusDays(9)), OptionalDouble.empty(), Optional.empty()));
        BurnDown burnDown = BurnDown.of(tasks, editing(5, 3, 0.2), MONDAY.plusWeeks(2));
        assertThat(burnDown.speed()).isEqualTo(0.5);
        assertThat(burnDown.real()).containsExactly(3, 3, 2);
    }

    @Test
    void aLessonFinishedTodayIsNoLongerLeft() {
        for (LocalDate today : List.of(MONDAY, MONDAY.plusDays(3), MONDAY.plusWeeks(1))) {
            assertThat(BurnDown.of(List.of(done("l1", today), task("l2", 4)), editing(5, 3, 0.2), today)
                            .real())
                    .as("finished on " + today)
                    .endsWith(1);
        }
    }

    /** The entry of a week is what was left when it was over: its Sunday counts, the Monday after it does not. */
    @Test
    void aLessonCountsInTheWeekInWhichItWasFinished() {
        List<EditTask> tasks = List.of(done("l1", MONDAY.plusDays(6)), done("l2", MONDAY.plusDays(7)), task("l3", 4));
        assertThat(BurnDown.of(tasks, editing(5, 3, 0.2), MONDAY.plusDays(8)).real())
                .containsExactly(3, 2, 1);
    }

    @Test
    void beforeTheEditBeginsNothingIsDrawnAndTheForecastCountsFromItsFirstDay() {
        BurnDown burnDown = BurnDown.of(tasks(4), editing(5, 3, 0.2), MONDAY.minusWeeks(2));
        assertThat(burnDown.real()).isEmpty();
        assertThat(burnDown.forecast()).contains(MONDAY.plusWeeks(1).minusDays(1));
    }

    @Test
    void whenEverythingIsFinishedThereIsNothingToForecast() {
        BurnDown burnDown = BurnDown.of(List.of(done("l1", MONDAY)), editing(5, 3, 0.2), MONDAY.plusDays(1));
        assertThat(burnDown.forecast()).isEmpty();
        assertThat(burnDown.real()).endsWith(0);
    }

    private static EditTask done(String name, LocalDate day) {
        return new EditTask(name, 8, 4, Optional.of(day), OptionalDouble.empty(), Optional.empty());
    }

    @Test
    void thereIsNoForecastBeforeAnythingIsFinished() {
        BurnDown burnDown = BurnDown.of(tasks(4, 4), editing(5, 3, 0.2), MONDAY.plusWeeks(2));
        assertThat(burnDown.forecast()).isEmpty();
        assertThat(EditText.of(tasks(4, 4), editing(5, 3, 0.2), MONDAY.plusWeeks(2)))
                .contains("Planned until 2027-03-14. No forecast: nothing was finished in the weeks so far.");
    }

    @Test
    void saysWhetherTheNumberOfWeeksIsUsual() {
        assertThat(text(tasks(4, 4), MONDAY))
                .contains("Your plan has 2 weeks of editing. A first course usually takes 6 to 12", "Yours is shorter");
        assertThat(text(tasks(60), MONDAY)).contains("15 weeks of editing", "More hours a week, simpler pictures");
        assertThat(text(tasks(32), MONDAY)).contains("8 weeks of editing", "(common practice).");
    }

    @Test
    void theTextFitsATerminal() {
        List<EditTask> tasks = tasks(4, 40, 4, 1, 1, 1, 1, 1, 1);
        assertThat(EditText.of(tasks, editing(5, 3, 0.2), MONDAY.plusWeeks(3))).allMatch(row -> row.length() <= 80);
        assertThat(EditText.costs(new Costs("USD", 99999, 100, 99999, 99.99, 0.9), tasks))
                .allMatch(row -> row.length() <= 80);
    }

    @Test
    void countsTheSalesThatPayForTheEdit() {
        // 400 + 20 h at 25 = 900; a sale brings 40; a quote of 600 with the same equipment is 1000.
        assertThat(Balance.of(new Costs("USD", 400, 25, 600, 50, 0.8), 20)).isEqualTo(new Balance(900, 1000, 23, 25));
        assertThat(Balance.of(new Costs("", 0, 10, 0, 50, 1), 20)).isEqualTo(new Balance(200, 0, 4, 0));
    }

    private static String text(List<EditTask> tasks, LocalDate today) {
        return String.join(" ", EditText.of(tasks, editing(5, 3, 0.2), today));
    }

    private static List<EditTask> tasks(double... hours) {
        List<EditTask> tasks = new ArrayList<>();
        for (double each : hours) {
            tasks.add(task("l" + (tasks.size() + 1), each));
        }
        return tasks;
    }

    private static EditTask task(String name, double hours) {
        return new EditTask(name, 8, hours, Optional.empty(), OptionalDouble.empty(), Optional.empty());
    }

    private static Editing editing(double hours, int lessons, double slack) {
        return new Editing(Optional.of(MONDAY), hours, lessons, slack, Map.of());
    }
}
