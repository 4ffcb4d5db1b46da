package org.bookholder.app.course;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.bookholder.app.environment.Environment;
import org.bookholder.course.CourseReader;
import org.bookholder.course.Lesson;
import org.bookholder.course.RecordedSession;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class CourseSessionsTest {
    @TempDir
    private Path folder;

    private Environment here;
    private Path original;
    private Path copy;

    @BeforeEach
    void copyALesson() throws Exception {
        here = StoredExamples.here(Files.createDirectories(folder.resolve("data")));
        original = Files.createDirectories(folder.resolve("first")).resolve("lesson.md");
        copy = Files.createDirectories(folder.resolve("second")).resolve("lesson.md");
        Files.writeString(original, StoredExamples.script());
        Files.writeString(copy, StoredExamples.script());
    }

    @Test
    void aCopyOfALessonIsNotRecorded() throws Exception {
        StoredExamples.write(here.sessions().resolve("a-lesson"), original.toString());
        assertThat(sessions(original)).hasSize(1);
        assertThat(sessions(copy)).isEmpty();
    }

    @Test
    void aLessonThatWasMovedStaysRecorded() throws Exception {
        StoredExamples.write(here.sessions().resolve("a-lesson"), original.toString());
        Files.delete(original);
        assertThat(sessions(copy)).hasSize(1);
    }

    @Test
    void aCourseThatWasCopiedWithItsSessionsStaysRecorded() throws Exception {
        StoredExamples.write(copy.resolveSibling("sessions").resolve("a-lesson"), original.toString());
        assertThat(sessions(copy)).hasSize(1);
    }

    @Test
    void aCourseThatIsNamedByARelativePathIsTheSame() throws Exception {
        StoredExamples.write(copy.resolveSibling("sessions").resolve("a-lesson"), original.toString());
        Path relative = Path.of("").toAbsolutePath().relativize(copy.toAbsolutePath());
        assertThat(sessions(relative)).hasSize(1);
    }

    @Test
    void aCourseThatIsReachedThroughALinkIsTheSame() throws Exception {
        StoredExamples.write(here.sessions().resolve("a-lesson"), original.toString());
        Path link = Files.createSymbolicLink(folder.resolve("link"), original.getParent());
        assertThat(sessions(link.resolve("lesson.md"))).hasSize(1);
    }

    private List<RecordedSession> sessions(Path script) throws Exception {
        Path course = script.resolveSibling("");
        List<Lesson> lessons = CourseReader.readable(course).lessons();
        CourseSessions found = CourseSessions.of(lessons, course.resolve("sessions"), here);
        return found.byLesson().getOrDefault(lessons.get(0), List.of());
    }
}
