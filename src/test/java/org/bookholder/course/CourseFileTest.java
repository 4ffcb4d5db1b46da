package org.bookholder.course;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.LocalDate;
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
                        "recording/hours", "for how long, set-up and breaks included; else 3", "2.5"));

        file.plan(LocalDate.of(2027, 9, 7), false);
        file.plan(LocalDate.of(2027, 9, 9), false);
        file.set("launch", "");
        assertThat(file.days()).isEmpty();
        assertThat(CourseReader.read(folder).launch()).isEmpty();
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
    void aFileThatIsNotUnderstoodIsNotWritten() throws Exception {
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
