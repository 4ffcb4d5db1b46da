package org.bookholder.app.script;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.bookholder.app.script.CourseImport.NewLesson;
import org.bookholder.course.Course;
import org.bookholder.course.CourseReader;
import org.bookholder.course.Lesson;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Lessons that are added to a course. */
final class CourseImportTest {
    private static final String LISTED = "title: Wheels  # mine\nlessons:\n  - b.md  # first\n";

    @TempDir
    private Path course;

    @BeforeEach
    void oneLesson() throws IOException {
        Files.writeString(course.resolve("b.md"), "---\ntitle: One\n---\nA line.\n");
    }

    private static NewLesson lesson(String name, String title) {
        return new NewLesson(name, "---\ntitle: " + title + "\n---\nA line.\n");
    }

    @Test
    void theyLieInTheFolder() throws ProblemException {
        CourseImport.add(course, List.of(lesson("a.md", "Two"), lesson("c.txt", "Three")));
        assertThat(CourseReader.read(course).lessons())
                .extracting(Lesson::title)
                .containsExactly("Two", "One", "Three");
        assertThat(course.resolve(Course.FILE)).doesNotExist();
    }

    @Test
    void theyComeLastWhereTheFileListsTheLessons() throws Exception {
        Files.writeString(course.resolve(Course.FILE), LISTED);
        CourseImport.add(course, List.of(lesson("a.md", "Two")));
        assertThat(CourseReader.read(course).lessons())
                .extracting(Lesson::title)
                .containsExactly("One", "Two");
        assertThat(course.resolve(Course.FILE)).hasContent(LISTED + "  - a.md\n");
    }

    @Test
    void aLessonWithoutWordsYetIsTakenAndNamedAsSuch() throws ProblemException {
        CourseImport.add(course, List.of(new NewLesson("a.md", "---\ntitle: Empty\n---\n\n")));
        assertThat(CourseReader.readable(course).unreadable()).hasSize(1);
    }

    @Test
    void allOrNoneAreAdded() throws Exception {
        Files.writeString(course.resolve(Course.FILE), LISTED);
        for (List<NewLesson> bad : List.of(
                List.of(lesson("a.md", "Two"), lesson("c.md", "One")),
                List.of(lesson("a.md", "Two"), lesson("b.md", "Three")),
                List.of(lesson("a.md", "Two"), lesson("../c.md", "Three")),
                List.of(lesson("a.md", "Two"), lesson("A.md", "Three")),
                List.<NewLesson>of())) {
            assertThatThrownBy(() -> CourseImport.add(course, bad))
                    .as(bad.toString())
                    .isInstanceOf(ProblemException.class);
            assertThat(course.resolve("a.md")).doesNotExist();
            assertThat(course.resolve(Course.FILE)).hasContent(LISTED);
            assertThat(course.resolve("b.md")).content().contains("One");
        }
    }
}
