package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.bookholder.course.CourseFolder;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Invalid courses: one line that says what, where and what to do; limits that no plan can meet are reported with the
 * reason. The test machine's clock stands at 2026-03-02.
 */
final class CourseInputTest {
    @TempDir
    private Path folder;

    private Program program;
    private CourseFolder files;
    private String place;

    @BeforeEach
    void writeCourse() {
        program = new Program(folder);
        files = new CourseFolder(folder.resolve("wheels"));
        place = files.path().toString();
        files.lesson("hub", "Every wheel begins with its hub, and goes round it.\n".repeat(120));
    }

    @ParameterizedTest
    @ValueSource(strings = {"time", "course", "plan"})
    void aFolderWithoutScripts(String command) {
        files.file("pictures/hub.png", "x");
        place = files.path().resolve("pictures").toString();
        refuses(command, place + ": the folder holds no script; put lessons into it as .md, .txt or .docx files");
    }

    @ParameterizedTest
    @ValueSource(strings = {"time", "course", "plan"})
    void twoLessonsOfOneName(String command) {
        Path second = files.file("hub.txt", "Another hub.\n");
        refuses(
                command,
                second + ": two lessons have the same name 'hub' (hub.md and hub.txt); rename one of the files");
    }

    @ParameterizedTest
    @ValueSource(strings = {"time", "course", "plan"})
    void aMistakeInCourseYaml(String command) {
        Path file = files.file("course.yaml", "title: Wheels\npace: fast\n");
        refuses(command, file + ":2: pace 'fast' is not a whole number; give 40 to 300 words per minute");
    }

    @Test
    void anImpossibleDate() {
        Path file = files.file("course.yaml", "recording:\n  days: [2026-03-09, 2026-02-30]\n");
        refuses("plan", file + ":2: there is no day '2026-02-30'; write it as year-month-day: 2027-03-09");
    }

    @Test
    void zeroHoursAWeek() {
        Path file = files.file("course.yaml", "editing:\n  hours a week: 0\n");
        refuses("plan", file + ":2: hours a week 0 is out of range; give 0.5 to 168 hours");
    }

    @Test
    void recordingDaysInThePast() {
        files.file("course.yaml", "recording: {days: [2026-02-27, 2026-03-01]}\n");
        plans("Why: every recording day is over; add new days.");
        files.file("course.yaml", "recording: {days: [2026-03-01, 2026-03-09]}\n");
        plans("1 recording day of course.yaml is over.");
        assertThat(program.out()).contains("Session 1, 2026-03-09").doesNotContain("Why:");
    }

    @Test
    void aLaunchInThePast() {
        files.file("course.yaml", "launch: 2026-02-01\n");
        plans("Launch: 2026-02-01 is over. Nobody knows yet when the edit will be done: no recording day is chosen.");
    }

    @Test
    void limitsThatNoPlanCanMeet() {
        files.file("course.yaml", "recording: {days: [2026-03-09], hours: 0.5}\n");
        plans("Why: 2026-03-09 is too short to read anything after 30 min of set-up; give it more hours, or set up"
                + " faster.");
        files.file("course.yaml", "recording: {days: [{day: 2026-03-09, hours: 1}], set-up: 50}\n");
        plans("Why: there are 18 min to record, and the days given hold at most 9 min of it, whole lessons and with"
                + " their breaks; add a day, of 59 min or more, or give the days more hours.");
        folder.resolve("settings").toFile().mkdirs();
        program.file("settings/limits.txt", "reading: 1, 1, 1\nvoice: 1, 1, 1\n");
        files.file("course.yaml", "recording: {ratio: 2}\n");
        plans("Why: hub would not fit into any session, not even in 20 parts; make several lessons of it.");
    }

    private void plans(String reason) {
        assertThat(program.run("plan", place)).as(program.err()).isZero();
        assertThat(program.out().replaceAll("\\s+", " ")).contains(reason);
    }

    private void refuses(String command, String line) {
        assertThat(program.run(command, place)).isEqualTo(2);
        assertThat(program.err()).isEqualTo("bookholder: " + line + System.lineSeparator());
        assertThat(program.out()).isEmpty();
    }
}
