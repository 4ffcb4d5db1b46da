package org.bookholder.app.delivery;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.delivery.FilmCheck;
import org.bookholder.delivery.Finding;
import org.bookholder.delivery.ProfileForm;
import org.bookholder.footage.Film;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.StoredExamples;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which names of films are right by the usual profile, with the scripts around them. */
final class ExportJobTest {
    @TempDir
    private Path folder;

    @BeforeEach
    void write() throws IOException {
        Files.createDirectories(folder.resolve("basics"));
        Files.writeString(folder.resolve("01 Welcome.md"), "Welcome to the workshop.\n");
        Files.writeString(folder.resolve("basics/02 Tools.md"), "These are the tools.\n");
    }

    @Test
    void aFilmOfALessonOfTheCourseMayHaveItsName() throws ProblemException, IOException {
        Files.writeString(folder.resolve("course.yaml"), """
                title: A course
                lessons:
                  - 01 Welcome.md
                  - basics/02 Tools.md
                """);
        assertThat(refused("exports/01 Welcome.mp4")).isEmpty();
        assertThat(refused("exports/01 Welcome-2.mp4")).isEmpty();
        assertThat(refused("exports/03 Goodbye.mp4"))
                .containsExactly("the name does not look like {lesson}.{ending}: the space is not allowed; "
                        + "call it 03-Goodbye.mp4");
    }

    @Test
    void aFilmOfALessonInAModuleMayHaveItsName() throws ProblemException, IOException {
        Files.delete(folder.resolve("01 Welcome.md"));
        Files.writeString(folder.resolve("course.yaml"), "title: A course\n");
        assertThat(refused("exports/basics-02 Tools.mp4")).isEmpty();
    }

    @Test
    void withoutACourseTheScriptBesideTheFilmNamesIt() throws ProblemException {
        assertThat(refused("01 Welcome_v2.mp4")).isEmpty();
        assertThat(refused("02 Tools.mp4")).hasSize(1);
    }

    private List<String> refused(String film) throws ProblemException {
        Path file = folder.resolve(film);
        ExportJob.Choices choices =
                new ExportJob.Choices(Optional.empty(), ProfileForm.usual(), Optional.empty(), false);
        ExportJob job = ExportJob.of(file, choices, StoredExamples.here(folder));
        Film bare = new Film(file, 1, "mp4", StreamTime.ofSeconds(60), Optional.empty(), Optional.empty());
        List<Finding> all = new FilmCheck(bare, job.profile())
                .end(StreamTime.ofSeconds(60), StreamTime.ofSeconds(60), 0)
                .findings();
        return all.stream()
                .filter(finding -> finding.kind().equals("name"))
                .map(finding -> finding.what() + "; " + finding.remedy())
                .toList();
    }
}
