package org.bookholder.app.course;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.cut;
import static org.bookholder.testing.Readings.rolled;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.bookholder.app.environment.Environment;
import org.bookholder.course.Course;
import org.bookholder.course.CourseFolder;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is worked out again while a course is looked at. */
final class CourseDeskTest {
    @TempDir
    private Path folder;

    private Environment here;
    private CourseFolder files;
    private Path session;

    @AutoClose
    private CourseDesk desk;

    @BeforeEach
    void writeACourse() throws Exception {
        here = StoredExamples.here(folder);
        files = new CourseFolder(Files.createDirectories(folder.resolve("wheels")));
        Path read = files.file("1-lesson.md", StoredExamples.script());
        files.lesson("2-hub", "Every wheel begins with its hub.");
        days("2099-01-12");
        session = files.path().resolve("sessions/monday");
        StoredExamples.write(session, read.toString());
        desk = new CourseDesk(here, files.path(), true);
    }

    @Test
    void aChangeThatTouchesNoPlanParsesNothingAndPlansNothing() throws Exception {
        CourseStatus before = look();
        takeOneMore();
        CourseStatus after = look();

        assertThat(after).as("looked at again").isNotSameAs(before);
        assertThat(after.plan()).isSameAs(before.plan());
        assertThat(after.course().lessons())
                .hasSize(2)
                .allSatisfy(lesson -> assertThat(lesson.script())
                        .isSameAs(before.course()
                                .lessons()
                                .get(lesson.number() - 1)
                                .script()));
    }

    @Test
    void aLessonThatWasRewrittenIsPlannedAnew() throws Exception {
        CourseStatus before = look();
        files.lesson("2-hub", "Every wheel begins with its hub. ".repeat(40));
        CourseStatus after = look();

        assertThat(after.plan()).isNotEqualTo(before.plan());
        assertThat(after.course().lessons()).isEqualTo(files.read().lessons());
        assertThat(after.course().lessons().get(0).script())
                .isSameAs(before.course().lessons().get(0).script());
    }

    @Test
    void otherDaysArePlannedAnew() throws Exception {
        CourseStatus before = look();
        days("2099-01-13");
        assertThat(look().plan().sessions().get(0).date().orElseThrow()).hasToString("2099-01-13");
        assertThat(before.plan().sessions().get(0).date().orElseThrow()).hasToString("2099-01-12");
    }

    private void days(String day) {
        files.file(Course.FILE, "title: Wheels\nrecording: {days: [" + day + "], ratio: 1.5}\n");
    }

    private void takeOneMore() throws ProblemException {
        try (SessionFolder open = SessionFolder.open(session, here.locks())) {
            open.journal().append(List.of(rolled(3, 30), cut(3, 31)));
        }
    }

    private CourseStatus look() throws ProblemException {
        return desk.overview().orElseThrow().status();
    }
}
