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

/** What {@code bookholder desk} opens; each is ended by Enter at once. */
final class DeskCommandTest {
    @TempDir
    private Path folder;

    private Program program;

    @BeforeEach
    void type() {
        program = new Program(folder);
        program.types("\n");
    }

    @Test
    void opensASession() throws IOException, ProblemException {
        StoredExamples.write(folder.resolve("session"), "lesson.md");
        assertThat(program.run("desk", program.path("session"))).isZero();
        assertThat(program.out()).contains("Session: " + program.path("session"), "Desk: http://127.0.0.1:");
    }

    @Test
    void opensACourseAndKeepsItsKeysElsewhere() throws IOException, ProblemException {
        CourseFolder course = new CourseFolder(folder.resolve("wheels"));
        course.lesson("hub", "Every wheel begins with its hub.");
        assertThat(program.run("desk", course.path().toString())).isZero();
        assertThat(program.out()).contains("Course: " + course.path(), "Desk: http://127.0.0.1:");
        assertThat(course.path()).isDirectoryNotContaining("glob:**desk.json");
        assertThat(folder.resolve("data/desks")).isDirectoryRecursivelyContaining("glob:**desk.json");
    }

    @Test
    void opensAFolderOfSessions() throws IOException, ProblemException {
        StoredExamples.write(folder.resolve("kept/monday"), "lesson.md");
        assertThat(program.run("desk", program.path("kept"))).isZero();
        assertThat(program.out()).contains("Sessions: " + program.path("kept"));
    }

    @Test
    void impossibleRequestsGetOneLine() throws IOException, ProblemException {
        Files.createDirectory(folder.resolve("empty"));
        CourseFolder course = new CourseFolder(folder.resolve("wheels"));
        course.lesson("hub", "Every wheel begins with its hub.");
        course.file("course.yaml", "lessons: [none.md]\n");
        assertThat(program.run("desk", program.path("empty"))).isEqualTo(2);
        assertThat(program.err()).hasLineCount(1).contains("neither a session nor a script lies there");
        assertThat(program.run("desk", course.path().toString())).isEqualTo(2);
        assertThat(program.err()).hasLineCount(1).contains("course.yaml:1", "there is no file 'none.md'");
    }
}
