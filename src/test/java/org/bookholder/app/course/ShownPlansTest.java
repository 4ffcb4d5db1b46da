package org.bookholder.app.course;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.course.shoot.PlanChange;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is told of changes that were made in course.yaml by hand. */
final class ShownPlansTest {
    private static final LocalDate TODAY = LocalDate.of(2027, 3, 1);
    private static final String THREE = "2027-03-03, 2027-03-05, 2027-03-09";

    @TempDir
    private Path folder;

    private Path course;

    @BeforeEach
    void twoLessons() throws IOException {
        course = Files.createDirectories(folder.resolve("course"));
        for (String name : List.of("hub", "rim")) {
            Files.writeString(
                    course.resolve(name + ".md"),
                    "---\ntitle: The " + name + "\n---\n"
                            + ("Take the " + name + " in hand, and look at it from both sides.\n").repeat(60));
        }
        days(THREE);
    }

    private void days(String days) throws IOException {
        Files.writeString(course.resolve("course.yaml"), "recording: {set-up: 10, hours: 0.5, days: [" + days + "]}\n");
    }

    private Environment on(LocalDate day) throws ProblemException {
        InstantSource noon = () -> day.atTime(12, 0).toInstant(ZoneOffset.UTC);
        return StoredExamples.here(folder.resolve("data")).at(noon);
    }

    private List<String> shown(LocalDate day) throws ProblemException {
        Environment here = on(day);
        return sentences(new ShownPlans(here, course).show(plan(here)));
    }

    private CoursePlan plan(Environment here) throws ProblemException {
        return new CoursePlan(CourseStatus.read(course, here), here.zone());
    }

    private static List<String> sentences(Optional<PlanChange> change) {
        return change.map(known -> known.sentences(name -> name)).orElse(List.of());
    }

    @Test
    void aDayThatWasTakenOutByHandTellsWhatMovedUntilTheDayIsOver() throws Exception {
        assertThat(shown(TODAY)).as("the first time").isEmpty();
        days("2027-03-05, 2027-03-09");
        Environment later = on(TODAY.plusDays(1));
        List<String> told = List.of(
                "Since the plan was last shown, on 2027-03-01: 2027-03-03 is no recording day any more. So these lessons moved:",
                "hub: 2027-03-05 instead of 2027-03-03",
                "rim: 2027-03-09 instead of 2027-03-05",
                "The last recording day is 2027-03-09 instead of 2027-03-05.");
        assertThat(sentences(new ShownPlans(later, course).moved(plan(later)))).isEqualTo(told);
        assertThat(shown(TODAY.plusDays(1))).isEqualTo(told);
        assertThat(shown(TODAY.plusDays(1))).as("again on that day").isEqualTo(told);
        assertThat(shown(TODAY.plusDays(2))).isEmpty();
    }

    @Test
    void aDayThatWasAddedIsTold() throws Exception {
        days("2027-03-05, 2027-03-09");
        shown(TODAY);
        days(THREE);
        assertThat(shown(TODAY))
                .startsWith(
                        "Since the plan was last shown, on 2027-03-01: 2027-03-03 became a recording day. So these lessons"
                                + " moved:");
        days("2027-03-05, 2027-03-09, 2027-03-20");
        assertThat(shown(TODAY))
                .startsWith(
                        "Since the plan was last shown, on 2027-03-01: 2027-03-03 is no recording day any more, and 2027-03-20"
                                + " became a recording day. So these lessons moved:");
    }

    @Test
    void whatALostDayTellsIsNotToldTwice() throws Exception {
        shown(TODAY);
        LocalDate ill = LocalDate.of(2027, 3, 4);
        assertThat(plan(on(ill)).status().lost().orElseThrow().moves()).hasSize(2);
        assertThat(shown(ill)).isEmpty();
        days("2027-03-03, 2027-03-05, 2027-03-09, 2027-03-20");
        assertThat(shown(ill))
                .as("a day that moved nothing")
                .containsExactly(
                        "Since the plan was last shown, on 2027-03-04: 2027-03-20 became a recording day; that moved no lesson.");
    }

    @Test
    void whatThePageHasToldAtOnceIsNotToldAgain() throws Exception {
        shown(TODAY);
        days("2027-03-05, 2027-03-09");
        Environment here = on(TODAY);
        days(THREE);
        CoursePlan was = plan(here);
        days("2027-03-05, 2027-03-09");
        new ShownPlans(here, course).told(was, plan(here));
        assertThat(shown(TODAY)).isEmpty();
    }

    @Test
    void aClickDoesNotHideWhatMovedByHandBeforeIt() throws Exception {
        shown(TODAY);
        Environment here = on(TODAY);
        days("2027-03-05, 2027-03-09");
        CoursePlan byHand = plan(here);
        days("2027-03-05, 2027-03-09, 2027-03-20");
        new ShownPlans(here, course).told(byHand, plan(here));
        assertThat(shown(TODAY))
                .startsWith(
                        "Since the plan was last shown, on 2027-03-01: 2027-03-03 is no recording day any more. So these lessons moved:");
    }

    @Test
    void eachChangeIsToldAgainstThePlanBeforeIt() throws Exception {
        shown(TODAY);
        days("2027-03-05, 2027-03-09");
        assertThat(shown(TODAY)).contains("hub: 2027-03-05 instead of 2027-03-03");
        days("2027-03-09, 2027-03-11");
        assertThat(shown(TODAY))
                .contains("hub: 2027-03-09 instead of 2027-03-05")
                .anyMatch(line -> line.contains("2027-03-05 is no recording day any more"))
                .noneMatch(line -> line.contains("2027-03-03"));
    }

    @Test
    void whatCannotBeReadCountsAsNeverShown() throws Exception {
        shown(TODAY);
        try (var files = Files.list(folder.resolve("data/plans"))) {
            Files.writeString(files.findFirst().orElseThrow(), "{\"before\":");
        }
        days("2027-03-05, 2027-03-09");
        assertThat(shown(TODAY.plusDays(1))).isEmpty();
    }
}
