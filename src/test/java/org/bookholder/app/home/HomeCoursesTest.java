package org.bookholder.app.home;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.app.environment.Environment;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class HomeCoursesTest {
    @TempDir
    private Path folder;

    @Test
    void howFarACourseIsLookedAtIsToldTheFirstTimeOnly() throws Exception {
        Environment here = StoredExamples.here(Files.createDirectories(folder.resolve("data")));
        Path course = Files.createDirectories(folder.resolve("course"));
        Files.writeString(course.resolve("lesson.md"), StoredExamples.script());
        for (int session = 1; session <= 3; session++) {
            StoredExamples.write(here.sessions().resolve("session-" + session), "lesson.md");
        }
        List<HomeCourses.Looking> told = new ArrayList<>();
        try (HomeCourses courses = new HomeCourses(here, new HomeReading(here, fault -> {}))) {
            courses.whileLooking(() -> told.add(courses.looking().orElseThrow()));
            courses.begin(course);
            assertThat(courses.seen()).as("nothing is looked at yet").isEqualTo(HomeCourses.Seen.NOTHING);

            courses.look();
            assertThat(told)
                    .containsExactly(
                            new HomeCourses.Looking(0, 3),
                            new HomeCourses.Looking(1, 3),
                            new HomeCourses.Looking(2, 3));
            assertThat(courses.looking()).isEmpty();
            assertThat(courses.seen().overview().orElseThrow().sessions().values())
                    .singleElement()
                    .satisfies(sessions -> assertThat(sessions).hasSize(3));
            assertThat(courses.kept(courses.seen()))
                    .hasSize(3)
                    .allSatisfy(kept -> assertThat(kept.damaged()).isFalse());

            StoredExamples.write(here.sessions().resolve("session-4"), "lesson.md");
            courses.look();
            assertThat(told).as("the course can be shown meanwhile").hasSize(3);
        }
    }
}
