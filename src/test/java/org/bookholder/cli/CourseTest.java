package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.bookholder.course.CourseFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A course from the command line; the made-up machine's clock stands at 2026-03-02. */
final class CourseTest {
    @TempDir
    private Path folder;

    private Program program;
    private CourseFolder files;

    @BeforeEach
    void writeCourse() {
        program = new Program(folder);
        files = new CourseFolder(folder.resolve("wheels"));
        files.lesson("hub", "Every wheel begins with its hub.");
        files.lesson("rim", "Every wheel ends with its rim.");
    }

    @Test
    void showsTheBoard() {
        assertThat(program.run("course", files.path().toString())).isZero();
        assertThat(program.out())
                .contains(
                        "  1 hub", "script", "Next: hub: plan its recording", "  rim: recording, edit, export, check");
        assertThat(program.err()).isEmpty();
    }

    @Test
    void showsTheBoardAsJson() {
        assertThat(program.run("course", files.path().toString(), "--json")).isZero();
        assertThat(program.out()).contains("\"title\" : \"wheels\"", "\"finished\" : false");
    }

    @Test
    void aReadingChangesTheBoardAndTheTimes() throws ProblemException {
        String script = files.file("hub.md", StoredExamples.script()).toString();
        assertThat(program.run("time", files.path().toString())).isZero();
        assertThat(program.out()).contains("Your own pace shows here").doesNotContain("yours");

        StoredExamples.write(files.path().resolve("sessions/monday"), script);

        assertThat(program.run("course", files.path().toString())).isZero();
        assertThat(program.out()).contains("partly recorded", "Next: hub: record line 6");
        assertThat(program.run("time", files.path().toString())).isZero();
        assertThat(program.out())
                .containsPattern("lesson +words +pace +runs +yours +grade")
                .containsPattern("Yours: at \\d+ words a minute, as measured over 0:\\d\\d of your own reading\\.");
        assertThat(program.run("time", files.path().toString(), "--json")).isZero();
        assertThat(program.out()).containsPattern("\"ownSeconds\" : \\d+\\.\\d+");
        assertThat(program.err()).isEmpty();
    }

    @Test
    void marksALessonAsEdited() {
        assertThat(program.run("course", files.path().toString(), "--edited", "hub", "--hours", "2.5"))
                .isZero();
        assertThat(program.out()).contains("  hub: recording, export, check");
        assertThat(program.run("course", files.path().toString(), "--not-edited", "1"))
                .isZero();
        assertThat(program.out()).contains("  hub: recording, edit, export, check");
    }

    @Test
    void lessonsMoveBetweenModules() {
        String course = files.path().toString();
        assertThat(program.run("course", course, "--add-module", "Wheels")).isZero();
        assertThat(program.run("course", course, "--add-module", "Tyres")).isZero();
        assertThat(program.run("course", course, "--move", "hub", "--to", "tyres"))
                .isZero();
        assertThat(program.run("course", course, "--move", "rim", "--to", "2", "--place", "1"))
                .isZero();
        assertThat(program.out()).containsPattern("Module 2: Tyres \\(.*\n +1 rim .*\n +2 hub ");
        assertThat(program.run("course", course, "--rename-module", "1", "--to", "Spokes"))
                .isZero();
        assertThat(program.run("course", course, "--move", "2", "--to", "none")).isZero();
        assertThat(program.run("course", course, "--remove-module", "spokes")).isZero();
        assertThat(files.path().resolve("course.yaml"))
                .hasContent("modules:\n  - title: Tyres\n    lessons:\n      - rim.md\nlessons:\n  - hub.md\n");
        refuses("it is not said where to", "course", course, "--move", "hub");
        refuses("no lesson is moved that could have it", "course", course, "--place", "1");
        refuses("the course has no module 'spokes'", "course", course, "--move", "hub", "--to", "spokes");
        refuses("this module has lessons", "course", course, "--remove-module", "1");
    }

    @Test
    void aRenamedScriptKeepsItsMark() throws IOException {
        assertThat(program.run("course", files.path().toString(), "--edited", "hub"))
                .isZero();
        Files.move(files.path().resolve("hub.md"), files.path().resolve("axle.md"));
        assertThat(program.run("course", files.path().toString())).isZero();
        assertThat(program.out()).contains("  axle: recording, export, check");
    }

    @Test
    void anAmbiguousLessonIsAskedBack() {
        files.lesson("part-1", "A lesson of another number.");
        refuses("'1' may be any of 2 lessons", "course", files.path().toString(), "--edited", "1");
        assertThat(files.path().resolve("progress.json")).doesNotExist();
    }

    @Test
    void writesAPage() {
        Path page = folder.resolve("board.html");
        assertThat(program.run("course", files.path().toString(), "--page", page.toString()))
                .isZero();
        assertThat(page).content().contains("<title>wheels</title>", "</html>");
        refuses("the page cannot be written", "course", files.path().toString(), "--page", program.path("none/b.html"));
    }

    @Test
    void tellsTheTimes() {
        assertThat(program.run("time", files.path().toString())).isZero();
        assertThat(program.out()).contains("wheels: 2 lessons", "  1 hub", "in all");
        assertThat(program.run("time", files.path().resolve("hub.md").toString()))
                .isZero();
        assertThat(program.out()).contains("  1 hub").doesNotContain("in all");
        assertThat(program.run("time", files.path().toString(), "--json")).isZero();
        assertThat(program.out()).contains("\"targetPace\" : 100");
    }

    @Test
    void plansAndWritesACalendar() {
        files.file("course.yaml", "recording: {days: [2026-03-09]}\ncosts: {price: 40}\n");
        Path calendar = folder.resolve("sessions.ics");
        assertThat(program.run("plan", files.path().toString(), "--calendar", calendar.toString()))
                .isZero();
        assertThat(program.out())
                .contains("Session 1, 2026-03-09", "week of", "How many lessons are left", "One sale brings 40.00")
                .contains("Calendar: " + calendar + " (1 session)");
        assertThat(calendar).content().contains("DTSTART:20260309T100000Z");
        assertThat(program.run("plan", files.path().toString(), "--json")).isZero();
        assertThat(program.out()).contains("\"headline\" : \"", "Launch: no day is set.", "\"sessions\" : [");
        assertThat(program.run("course", files.path().toString())).isZero();
        assertThat(program.out()).contains("planned", "record it on 2026-03-09");
    }

    @Test
    void impossibleRequestsGetOneLine() {
        refuses("there is no such folder", "course", program.path("none"));
        refuses("the folder holds no script", "time", folder.toString());
        refuses("there is no such file", "time", program.path("none.md"));
        refuses("the course has no lesson 'tyre'", "course", files.path().toString(), "--edited", "tyre");
        refuses("no edit is marked", "course", files.path().toString(), "--hours", "2");
        refuses("an edit takes no -1.0 hours", "course", files.path().toString(), "--edited", "hub", "--hours", "-1");
        refuses("no session has a day", "plan", files.path().toString(), "--calendar", program.path("s.ics"));
        files.file("progress.json", "[{");
        refuses(
                "progress.json: the marks cannot be understood",
                "course",
                files.path().toString());
        files.file("course.yaml", "titel: Wheels\n");
        refuses(
                "course.yaml:1: there is no setting 'titel'",
                "plan",
                files.path().toString());
    }

    private void refuses(String message, String... arguments) {
        assertThat(program.run(arguments)).isEqualTo(2);
        assertThat(program.err()).startsWith("bookholder: ").contains(message).hasLineCount(1);
    }
}
