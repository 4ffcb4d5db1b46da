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
                .contains(
                        "<h1>Hubs &amp; &lt;rims&gt;</h1>", "Finished? Not yet.", "<td>hub</td>", "plan its recording")
                .contains("<strong>$12</strong>, due 2027-03-01", "Not exported yet.")
                .contains("No place was found for:</strong> hub. no room.")
                .contains("<polyline points=\"40,20 253,70 466,120 680,220\"", "<polyline points=\"40,20 253,20\"")
                .contains("Forecast: 2027-05-01, as planned.");
        assertThat(page).doesNotContain("<rims>", "http");
    }

    /** Whatever an author writes is text, in a page for itself and in the desk's. */
    @Test
    void hostileTitlesAreText() throws ProblemException {
        String hostile = "</title><script>alert('a')</script><img src=x onerror=\"alert(1)\"> &amp; ]]> \u0007";
        CourseFolder files = new CourseFolder(folder);
        files.file(
                "hub.md",
                "---\ntitle: \"" + hostile.replace("\"", "\\\"").replace("\u0007", "") + "\"\n---\nOne line.\n");
        Board board = BoardReader.read(files.read(), Map.of(), TODAY);
        RecordingTask work = new RecordingTask(1, hostile, hostile, Duration.ofMinutes(9), 0);
        SessionPlan plan = new SessionPlan(
                List.of(new PlannedSession(
                        Optional.of(TODAY),
                        LocalTime.NOON,
                        Duration.ofHours(1),
                        List.of(new PlannedSession.Slot(
                                PlannedSession.Use.READING, Duration.ZERO, work.length(), Optional.of(work))))),
                List.of(work),
                List.of(hostile),
                0,
                List.of());
        BurnDown burnDown = new BurnDown(TODAY, List.of(1, 0), List.of(), Optional.empty(), 1, hostile);
        String page = CoursePage.of(board, plan, burnDown);
        assertThat(page).doesNotContain("<script", "<img", "&amp; ]]>", "\u0007");
        assertThat(page).contains("&lt;script&gt;", "&amp;amp; ]]&gt;");
        // Title and heading are of the folder here; the lesson's title, two works of the plan twice, why, and the
        // forecast.
        assertThat(page.split("&lt;script&gt;", -1)).hasSize(1 + 1 + 4 + 1 + 1);
        assertThat(CoursePage.fragment(board, plan, burnDown)).doesNotContain("<script", "<img");
    }

    @Test
    void attributesCannotBeLeft() {
        String markup = new Markup()
                .open("p", "title", "\"><script>alert(1)</script>")
                .text("a < b & c")
                .close()
                .toString();
        assertThat(markup)
                .isEqualTo("<p title=\"&quot;&gt;&lt;script&gt;alert(1)&lt;/script&gt;\">a &lt; b &amp; c</p>\n");
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
