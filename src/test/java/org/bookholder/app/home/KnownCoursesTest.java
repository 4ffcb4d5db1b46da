package org.bookholder.app.home;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class KnownCoursesTest {
    @TempDir
    private Path folder;

    @Test
    void theLastOneUsedComesFirstAlsoTheNextTime() throws ProblemException, IOException {
        Path file = folder.resolve("data/courses.json");
        KnownCourses known = new KnownCourses(file);
        Path bread = folder.resolve("bread");
        Path wheels = folder.resolve("wheels");
        known.use(bread);
        known.use(wheels);
        known.saw(bread, "Bread from the first day", "2 lessons, 1 recorded");
        known.use(bread);

        KnownCourses again = new KnownCourses(file);
        assertThat(again.all())
                .containsExactly(
                        new KnownCourses.Entry(bread.toString(), "Bread from the first day", "2 lessons, 1 recorded"),
                        new KnownCourses.Entry(wheels.toString(), "wheels", ""));
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo("rw-------");
        again.forget(again.all().get(0).name());
        assertThat(new KnownCourses(file).all()).extracting("title").containsExactly("wheels");
    }

    @Test
    void aListThatCannotBeReadIsBegunAnew() throws IOException {
        Path file = Files.writeString(folder.resolve("courses.json"), "[{\"folder\":");
        assertThat(new KnownCourses(file).all()).isEmpty();
    }
}
