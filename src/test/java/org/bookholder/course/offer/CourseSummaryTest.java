package org.bookholder.course.offer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.bookholder.course.Course;
import org.bookholder.course.CourseFolder;
import org.bookholder.course.CourseReader;
import org.bookholder.course.EditingProgress;
import org.bookholder.course.ExportChecks;
import org.bookholder.course.Lesson;
import org.bookholder.course.RecordedSession;
import org.bookholder.course.Sessions;
import org.bookholder.course.board.BoardReader;
import org.bookholder.course.page.SummaryPage;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How far a course is, as others are told. */
final class CourseSummaryTest {
    private static final Instant RECORDED = Instant.parse("2027-03-01T10:00:00Z");
    private static final LocalDate TODAY = LocalDate.of(2027, 3, 9);

    @TempDir
    private Path folder;

    private CourseFolder files;

    @BeforeEach
    void begin() {
        files = new CourseFolder(folder);
    }

    @Test
    void saysOfEachLessonHowFarItIs() throws Exception {
        for (int number = 1; number <= 5; number++) {
            files.lesson("lesson-" + number, "The first line.\nThe second line.");
        }
        Course course = files.read();
        Map<Lesson, List<RecordedSession>> sessions = new HashMap<>();
        List<String> outcomes = List.of("cc", "cc", "cc", "c");
        for (int i = 0; i < outcomes.size(); i++) {
            Lesson lesson = course.lessons().get(i);
            sessions.put(lesson, List.of(Sessions.of(lesson.script(), RECORDED, outcomes.get(i))));
        }
        Instant later = RECORDED.plusSeconds(3600);
        EditingProgress.none().edited(later, course.lessons().get(1), true, 0).write(folder);
        Path film = files.export("lesson-1.mp4", later);
        ExportChecks.keep(folder, film, later, List.of());
        CourseSummary summary = CourseSummary.of(BoardReader.read(course, sessions, TODAY), ZoneOffset.UTC);

        assertThat(summary.sentence()).isEqualTo("1 of 5 lessons is finished; 3 are recorded.");
        assertThat(summary.steps()).extracting(CourseSummary.Step::done).containsExactly(5, 3, 2, 1);
        assertThat(summary.parts().get(0).rows())
                .extracting(CourseSummary.Row::standing)
                .containsExactly("finished", "edited, to be checked", "recorded", "partly recorded", "written");
        assertThat(SummaryText.of(summary, "Dear Ada,\nas promised."))
                .containsSequence("As it stands on 2027-03-09", "", "Dear Ada,", "as promised.", "")
                .contains("Recorded last on 2027-03-01")
                .contains("No day of completion is given before every lesson is finished and checked.");
    }

    @Test
    void itHoldsNothingThatIsNotForOthers() throws Exception {
        files.file("course.yaml", """
                title: Wheels
                launch: 2027-06-01
                recording: {days: [2027-03-20]}
                costs: {price: 40, hour: 25}
                quotation: {hour: 50, for: Ada}
                """);
        files.lesson("secret-name", "The first line.");
        files.file("secret-name.md", "---\ntitle: The hub\n---\nThe first line.\n");
        CourseSummary summary = CourseSummary.of(BoardReader.read(files.read(), Map.of(), TODAY), ZoneOffset.UTC);
        assertThat(SummaryPage.of(summary, "") + SummaryText.of(summary, ""))
                .contains("Wheels", "The hub", "9 March 2027")
                .doesNotContain("secret-name", "2027-06", "June", "2027-03-20", "20 March", "Ada", folder.toString())
                .doesNotContain("<script", "http", "href", "src=");
    }

    @Test
    void manyLessonsAreSummedUpByModuleSoThatItStaysOnePage() throws Exception {
        files.file("course.yaml", "title: Wheels\n");
        for (int number = 1; number <= 31; number++) {
            files.file(
                    (number <= 20 ? "1-hubs/" : "2-rims/") + "l" + number + ".md",
                    "---\ntitle: Part " + number + "\n---\nA line of number " + number + ".\n");
        }
        CourseSummary summary = CourseSummary.of(BoardReader.read(files.read(), Map.of(), TODAY), ZoneOffset.UTC);
        assertThat(summary.parts())
                .hasSize(2)
                .allSatisfy(part -> assertThat(part.rows()).isEmpty());
        assertThat(SummaryText.of(summary, "")).anyMatch(line -> line.endsWith(": 0 of 20 finished"));
    }

    @Test
    void aLessonThatCannotBeReadHasItsRowAndIsCounted() throws Exception {
        files.lesson("lesson-1", "The first line.");
        files.file("hub-plan.md", "# Only an outline\n");
        files.file("lesson-2.md", "---\npace: fast\n---\nA line.\n");
        CourseSummary summary =
                CourseSummary.of(BoardReader.read(CourseReader.readable(folder), Map.of(), TODAY), ZoneOffset.UTC);

        assertThat(summary.parts().get(0).rows())
                .extracting(CourseSummary.Row::number, CourseSummary.Row::title, CourseSummary.Row::standing)
                .containsExactly(
                        tuple(1, "Lesson 1", "to be written"),
                        tuple(2, "Lesson 2", "written"),
                        tuple(3, "Lesson 3", "can't be read yet"));
        assertThat(summary.sentence()).isEqualTo("0 of 3 lessons are finished; 0 are recorded.");
        assertThat(summary.steps()).extracting(CourseSummary.Step::done).containsExactly(1, 0, 0, 0);
        assertThat(SummaryPage.of(summary, "") + SummaryText.of(summary, ""))
                .contains("3 lessons, about 1 minute of film, not counting 2 lessons that can't be read yet")
                .doesNotContain("hub-plan", "lesson-1", ".md", "fast", folder.toString());
    }
}
