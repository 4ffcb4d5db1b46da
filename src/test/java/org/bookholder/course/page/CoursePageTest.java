package org.bookholder.course.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.course.Course;
import org.bookholder.course.CourseFolder;
import org.bookholder.course.board.Board;
import org.bookholder.course.board.BoardReader;
import org.bookholder.course.edit.BurnDown;
import org.bookholder.course.shoot.PlannedSession;
import org.bookholder.course.shoot.RecordingTask;
import org.bookholder.course.shoot.SessionPlan;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class CoursePageTest {
    private static final LocalDate TODAY = LocalDate.of(2027, 3, 9);

    @TempDir
    private Path folder;

    @Test
    void showsLessonsFactsSessionsAndThePlot() throws ProblemException {
        String page = page(List.of(4, 3, 2, 0), List.of(4, 4));
        assertThat(page)
                .contains("<h1>Hubs &amp; &lt;rims&gt;</h1>", "Not finished.", "<td>hub<td", "plan its recording")
                .contains("<strong>$12</strong>, due 2027-03-01", "not exported yet")
                .contains("No place was found for:</strong> hub (whole). no room.")
                .contains("<polyline points=\"40,20 253,70 466,120 680,220\"", "<polyline points=\"40,20 253,20\"")
                .contains("Forecast: 2027-05-01, as planned.");
        assertThat(page).doesNotContain("<rims>", "http");
    }

    @Test
    void plotsAPlanThatHasNotBegun() throws ProblemException {
        assertThat(page(List.of(1, 0), List.of()))
                .contains("points=\"40,20 680,220\"")
                .doesNotContain(">real<");
    }

    private String page(List<Integer> planned, List<Integer> real) throws ProblemException {
        CourseFolder files = new CourseFolder(folder);
        files.lesson("hub", "It costs [$12](check:2027-03).");
        files.file(Course.FILE, "title: Hubs & <rims>\n");
        Board board = BoardReader.read(files.read(), Map.of(), TODAY);
        RecordingTask work = new RecordingTask(1, "hub", "whole", Duration.ofMinutes(9), 0);
        SessionPlan plan = new SessionPlan(
                List.of(new PlannedSession(Optional.of(TODAY), LocalTime.NOON, Duration.ofHours(1), List.of())),
                List.of(work),
                List.of("no room"),
                0,
                List.of());
        BurnDown burnDown = new BurnDown(TODAY, planned, real, Optional.of(LocalDate.of(2027, 5, 1)), 1, "as planned");
        return CoursePage.of(board, plan, burnDown);
    }
}
