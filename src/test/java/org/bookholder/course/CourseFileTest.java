package org.bookholder.course;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class CourseFileTest {
    @TempDir
    private Path folder;

    private CourseFile file;

    @BeforeEach
    void makeLesson() throws IOException {
        Files.writeString(folder.resolve("a.md"), "A line.");
        file = new CourseFile(folder);
    }

    @Test
    void aCourseWithoutAFileIsPlannedByDaysAndValues() throws Exception {
        file.plan(LocalDate.of(2027, 9, 9), true);
        file.plan(LocalDate.of(2027, 9, 7), true);
        file.plan(LocalDate.of(2027, 9, 7), true);
        file.set("recording/hours", "2.5");
        file.set("launch", "2027-12-01");
        file.set("editing/hours per minute/slides", "0.4");

        assertThat(file.days()).containsExactly(LocalDate.of(2027, 9, 7), LocalDate.of(2027, 9, 9));
        Course course = CourseReader.read(folder);
        assertThat(course.shooting().days()).hasSize(2);
        assertThat(course.shooting().days().get(0).length().toMinutes()).isEqualTo(150);
        assertThat(course.launch()).contains(LocalDate.of(2027, 12, 1));
        assertThat(file.fields())
                .contains(new CourseFile.Field(
                        "recording/hours",
                        "Length of the day",
                        "hours",
                        CourseFile.Kind.NUMBER,
                        "Setting up and breaks included. If empty, 3.",
                        "2.5",
                        Map.of()));

        file.plan(LocalDate.of(2027, 9, 7), false);
        file.plan(LocalDate.of(2027, 9, 9), false);
        file.set("launch", "");
        assertThat(file.days()).isEmpty();
        assertThat(CourseReader.read(folder).launch()).isEmpty();
    }

    @Test
    void aDayGetsHoursOfItsOwnAndLosesThemAgain() throws Exception {
        Path yaml = Files.writeString(
                folder.resolve(Course.FILE), "recording:\n  days: [2027-09-07, 2027-09-09]  # booked\n  hours: 3\n");
        file.setHours(LocalDate.of(2027, 9, 9), "9:30", "2.5");
        assertThat(file.hours())
                .containsExactly(
                        new CourseFile.OwnHours(LocalDate.of(2027, 9, 7), "", ""),
                        new CourseFile.OwnHours(LocalDate.of(2027, 9, 9), "9:30", "2.5"));
        assertThat(yaml).content().contains("{day: 2027-09-09, from: 9:30, hours: 2.5}]  # booked");
        assertThat(CourseReader.read(folder).shooting().days().get(1).length().toMinutes())
                .isEqualTo(150);
        file.setHours(LocalDate.of(2027, 9, 9), "", "");
        assertThat(CourseReader.read(folder).shooting().days().get(1).length().toMinutes())
                .isEqualTo(180);
        String before = Files.readString(yaml);
        assertThatThrownBy(() -> file.setHours(LocalDate.of(2027, 9, 9), "noon", ""))
                .isInstanceOf(ProblemException.class);
        assertThatThrownBy(() -> file.setHours(LocalDate.of(2027, 9, 8), "9:00", ""))
                .hasMessageContaining("this is no recording day");
        assertThat(yaml).hasContent(before);
    }

    @Test
    void aLessonGetsAKindAndANewOneIsAddedWhereTheFileListsThem() throws Exception {
        Path yaml = Files.writeString(folder.resolve(Course.FILE), "title: Wheels  # mine\n");
        Files.writeString(folder.resolve("two words.md"), "---\ntitle: Two\n---\nA line.\n");
        Files.writeString(folder.resolve("one.md"), "---\ntitle: One\n---\nA line.\n");
        file.addLessons(List.of("two words.md"));
        assertThat(yaml).hasContent("title: Wheels  # mine\n");
        Files.writeString(yaml, "title: Wheels  # mine\nlessons:\n  - one.md\n  - a.md\n");
        file.setKind("one.md", LessonKind.SLIDES);
        file.addLessons(List.of("two words.md"));
        file.addLessons(List.of("two words.md"));
        file.setKind("two words.md", LessonKind.MOVING);
        file.setKind("one.md", LessonKind.PRESENTER);
        assertThat(yaml).hasContent("""
            title: Wheels  # mine
            lessons:
              - {script: one.md, kind: presenter}
              - a.md
              - {script: two words.md, kind: moving}
            """);
        assertThatThrownBy(() -> file.setKind("none.md", LessonKind.SLIDES)).hasMessageContaining("no such lesson");
    }

    @Test
    void aKindIsWrittenWithoutAListOfAllLessons() throws Exception {
        Path yaml = Files.writeString(folder.resolve(Course.FILE), "title: Wheels  # mine\n");
        Files.writeString(folder.resolve("one.md"), "---\ntitle: One\n---\nA line.\n");
        Files.writeString(folder.resolve("two words.md"), "---\ntitle: Two\n---\nA line.\n");
        file.setKind("two words.md", LessonKind.MOVING);
        assertThat(yaml).hasContent("title: Wheels  # mine\nkinds:\n  two words.md: moving\n");
        assertThat(CourseReader.read(folder).lessons())
                .extracting(Lesson::kind)
                .containsExactly(LessonKind.PRESENTER, LessonKind.PRESENTER, LessonKind.MOVING);
        Files.writeString(yaml, "kinds: {one.md: moved}\n");
        assertThatThrownBy(() -> CourseReader.read(folder)).hasMessageContaining("moved");
    }

    @Test
    void aLessonIsPutOnADayAndTakenOffTheOthers() throws Exception {
        Path yaml = Files.writeString(
                folder.resolve(Course.FILE),
                "recording:\n  days:  # mine\n    - 2027-09-07\n    - {day: 2027-09-09, from: 9:30}  # early\n");
        file.putOn("a.md", Optional.of(LocalDate.of(2027, 9, 9)));
        file.putOn("b c.md", Optional.of(LocalDate.of(2027, 9, 9)));
        file.putOn("a.md", Optional.of(LocalDate.of(2027, 9, 8)));
        assertThat(yaml).hasContent("""
            recording:
              days:  # mine
                - 2027-09-07
                - {day: 2027-09-08, lessons: [a.md]}
                - {day: 2027-09-09, from: 9:30, lessons: [b c.md]}  # early
            """);
        assertThat(CourseReader.read(folder).shooting().days().get(2).lessons()).containsExactly("b c");
        file.putOn("b c.md", Optional.empty());
        assertThat(yaml).content().contains("- {day: 2027-09-09, from: 9:30}  # early");
    }

    @Test
    void aLessonThatWasPutOnADayWithoutItsEndingIsTakenOffIt() throws Exception {
        Path yaml = Files.writeString(
                folder.resolve(Course.FILE), "recording:\n  days:\n    - {day: 2027-09-07, lessons: [a, b]}\n");
        file.putOn("a.md", Optional.of(LocalDate.of(2027, 9, 8)));
        assertThat(yaml).hasContent("""
            recording:
              days:
                - {day: 2027-09-07, lessons: [b]}
                - {day: 2027-09-08, lessons: [a.md]}
            """);
    }

    @Test
    void thePermissionsOfTheFileStay() throws Exception {
        Path yaml = Files.writeString(folder.resolve(Course.FILE), "title: Wheels\n");
        Files.setPosixFilePermissions(yaml, PosixFilePermissions.fromString("rw-rw-r--"));
        file.plan(LocalDate.of(2027, 9, 9), true);
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(yaml)))
                .isEqualTo("rw-rw-r--");
    }

    @Test
    void whatIsNotUnderstoodIsNotWritten() throws Exception {
        Path yaml = Files.writeString(folder.resolve(Course.FILE), "title: Wheels # mine\n");
        assertThatThrownBy(() -> file.set("recording/hours", "many"))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("hours");
        assertThatThrownBy(() -> file.set("costs/hour", "25"))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("price");
        assertThatThrownBy(() -> file.set("other", "1")).isInstanceOf(ProblemException.class);
        assertThat(yaml).hasContent("title: Wheels # mine\n");
    }
}
