package org.bookholder.course.offer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import org.bookholder.course.Course;
import org.bookholder.course.CourseFolder;
import org.bookholder.course.EditingProgress;
import org.bookholder.course.QuotationTerms;
import org.bookholder.course.RecordedSession;
import org.bookholder.course.Sessions;
import org.bookholder.course.board.Board;
import org.bookholder.course.board.BoardReader;
import org.bookholder.course.offer.Quotation.Row;
import org.bookholder.course.page.QuotationPage;
import org.bookholder.course.shoot.ChosenDays;
import org.bookholder.course.shoot.RecordingBacklog;
import org.bookholder.course.shoot.Terms;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Hours and prices, worked out by hand from a course of a lesson of ten minutes and one of five with slides. */
final class QuotationTest {
    private static final LocalDate TODAY = LocalDate.of(2027, 3, 1);
    private static final String YAML =
            "pace: 100\nlessons: [ten.md, {script: five.md, kind: slides}]\nrecording: {set-up: 30, ratio: 1.5}\n";

    @TempDir
    private Path folder;

    private CourseFolder files;

    @BeforeEach
    void writeCourse() {
        files = new CourseFolder(folder);
        files.file("course.yaml", YAML);
        files.lesson("ten", "one two three four five six seven eight nine ten.\n".repeat(100));
        files.lesson("five", "one two three four five six seven eight nine ten.\n".repeat(50));
    }

    @Test
    void theRowsAddUpToThePrice() throws ProblemException {
        files.file(
                "course.yaml",
                YAML + "quotation: {for: The guild, hour: 50, currency: EUR, more hours: 2, more for: Two talks,"
                        + " expenses: 40, expenses for: Hire of a lamp}\n");
        Quotation quotation = quotation();
        // 15 minutes times 1.5; 1 hour and 5 of a team (Crosslin, ch. 10), each for up to ten minutes; 15 minutes
        // watched once.
        assertThat(quotation.rows())
                .extracting(Row::what, Row::hours)
                .containsExactly(
                        tuple("Setting up", 0.5),
                        tuple("Reading before the camera", 0.4),
                        tuple("Editing", 6.0),
                        tuple("Watching each finished film once", 0.3),
                        tuple("Two talks", 2.0));
        assertThat(quotation.hours()).isEqualTo(9.2, within(1e-9));
        assertThat(quotation.work().orElseThrow()).isEqualTo(460, within(1e-9));
        assertThat(quotation.price().orElseThrow()).isEqualTo(500, within(1e-9));
        assertThat(QuotationText.of("Wheels", quotation))
                .contains("For: The guild")
                .anyMatch(line -> line.matches("  Price +500\\.00 EUR"))
                .anyMatch(line -> line.matches("  Hire of a lamp +40\\.00 EUR"));
        assertThat(QuotationPage.of("Wheels", TODAY, quotation))
                .contains("1 March 2027", "500.00 EUR", "no legal or tax advice", "Breaks are not counted as work.");
    }

    @Test
    void withoutARateThereAreHoursAndNoPrice() throws ProblemException {
        Quotation quotation = quotation();
        assertThat(quotation.price()).isEmpty();
        assertThat(QuotationText.of("Wheels", quotation))
                .anyMatch(line -> line.matches("  Hours in all +7\\.2"))
                .noneMatch(line -> line.contains("Price "));
        assertThat(QuotationPage.of("Wheels", TODAY, quotation)).doesNotContain("Amount", "Price");
    }

    @Test
    void filmsThatTheProgramMakesAreOnlyLookedThrough() throws ProblemException {
        files.file("course.yaml", YAML + "quotation: {films: made by Bookholder}\n");
        assertThat(quotation().rows())
                .extracting(Row::what, Row::hours)
                .contains(tuple("Looking through films made by Bookholder", 0.5))
                .noneMatch(row -> row.toList().contains("Editing"));
    }

    @Test
    void whatIsDoneCountsAsItWasNotAsItWasPlanned() throws ProblemException {
        Course course = files.read();
        EditingProgress.none()
                .edited(Instant.parse("2027-02-25T10:00:00Z"), course.lessons().get(0), true, 3)
                .write(folder);
        RecordedSession first =
                Sessions.of(course.lessons().get(0).script(), Instant.parse("2027-02-20T10:00:00Z"), "c".repeat(100));
        RecordedSession again =
                Sessions.of(course.lessons().get(0).script(), first.began().plus(Duration.ofHours(2)), "c".repeat(100));
        // A day on which it was recorded twice is one set-up, and one is to come: only that one is in the plan.
        assertThat(quotation(first, again).rows())
                .first()
                .isEqualTo(new Row("Setting up", 1.0, "2 sessions (1 recorded, 1 to come), 30 min each"));
        assertThat(quotation(first).rows())
                .filteredOn(row -> row.what().equals("Editing"))
                .singleElement()
                .satisfies(row -> assertThat(row.hours()).isEqualTo(8.0, within(1e-9)));
    }

    @Test
    void whatIsLeftForADayOnWhichSomethingWasRecordedNeedsNoOtherSetUp() throws ProblemException {
        files.file("course.yaml", YAML.replace("ratio: 1.5}", "ratio: 1.5, days: [" + TODAY + "]}"));
        RecordedSession today = Sessions.of(
                files.read().lessons().get(0).script(), TODAY.atTime(9, 0).toInstant(ZoneOffset.UTC), "c".repeat(100));
        assertThat(quotation(today).rows()).first().isEqualTo(new Row("Setting up", 0.5, "1 session, 30 min each"));
    }

    @Test
    void wrongFiguresAreNamedWithTheirLine() {
        files.file("course.yaml", YAML + "quotation: {hour: fifty}\n");
        assertThatThrownBy(() -> QuotationTerms.read(folder)).hasMessageContaining("hour 'fifty' is not a number");
        files.file("course.yaml", YAML + "quotation: {films: by magic}\n");
        assertThatThrownBy(() -> QuotationTerms.read(folder)).hasMessageContaining("made by Bookholder");
    }

    private Quotation quotation(RecordedSession... sessions) throws ProblemException {
        Course course = files.read();
        Board board = BoardReader.read(course, Map.of(course.lessons().get(0), List.of(sessions)), TODAY);
        RecordingBacklog works = RecordingBacklog.of(board);
        return Quotation.of(
                board,
                works,
                ChosenDays.plan(
                        works.works(),
                        course.shooting(),
                        Terms.of(FatigueLimits.defaults(), course.shooting().setUp()),
                        TODAY),
                List.of(sessions),
                QuotationTerms.read(folder),
                ZoneOffset.UTC);
    }
}
