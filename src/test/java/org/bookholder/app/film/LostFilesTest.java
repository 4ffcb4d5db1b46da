package org.bookholder.app.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.film.FilmedReading;
import org.bookholder.film.plan.FilmClip;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A lesson of two sessions, of which a camera's file cannot be used any more. */
final class LostFilesTest {
    private static final double BEFORE = 1.51;

    private static Path camera = Path.of("");

    @TempDir
    private Path folder;

    private Path course;
    private Path lesson;
    private Path first;
    private Path second;
    private Environment here;

    @BeforeAll
    static void film(@TempDir Path shared) {
        camera = FilmedReading.camera(shared.resolve("C0001.MP4"), BEFORE);
    }

    @BeforeEach
    void write() throws ProblemException, IOException {
        course = Files.createDirectories(folder.resolve("course"));
        lesson = Files.writeString(course.resolve("lesson-1.md"), FilmedReading.TEXT);
        Files.writeString(course.resolve("course.yaml"), "title: A course\n");
        first = course.resolve("sessions/first");
        second = course.resolve("sessions/second");
        FilmedReading.write(first, lesson.toString());
        FilmedReading.match(first, camera, BEFORE, 0);
        here = StoredExamples.here(folder);
    }

    @Test
    void aFinalFilmStopsWithFileSessionAndLinesAndADraftGoesOn() throws ProblemException, IOException {
        FilmedReading.writePickup(second, lesson.toString());
        Path gone = card("C0002.MP4");
        FilmedReading.match(second, gone, BEFORE, 0);
        Files.delete(gone);
        String what = "C0002.MP4 is not where it was matched any more (session second), and nothing else has line 4";
        String remedy =
                "; put it back, or match it again where it is now, leave the lines out with --leave-out, or make a draft with --draft";
        assertThatThrownBy(() -> film(false))
                .isInstanceOf(ProblemException.class)
                .hasMessage(gone + ": " + what + remedy);
        assertThat(course.resolve("exports")).doesNotExist();

        FilmResult draft = film(true);
        assertThat(draft.obstacles()).extracting(FilmObstacle::what).containsExactly(what);
        assertThat(draft.plan().unseen()).containsExactly(4);
        assertThat(draft.plan().clips()).hasSize(4).allMatch(FilmClip::used);

        FilmResult without = film(false, 4);
        assertThat(without.plan().clips()).allMatch(clip -> clip.session() == 0);
        assertThat(without.remarks())
                .anyMatch(remark -> remark.startsWith("C0002.MP4 is not where it was matched any"));

        Files.copy(camera, gone);
        assertThat(film(false).remarks()).noneMatch(remark -> remark.contains("C0002.MP4"));
    }

    @Test
    void anotherReadingThatIsAsGoodIsUsedAndSaid() throws ProblemException, IOException {
        FilmedReading.writeAgain(second, lesson.toString());
        Path gone = card("C0002.MP4");
        FilmedReading.match(second, gone, BEFORE, 0);
        assertThat(film(true).plan().clips()).allMatch(clip -> clip.session() == 1);
        Files.delete(gone);
        FilmResult film = film(false);
        assertThat(film.plan().clips()).allMatch(clip -> clip.session() == 0);
        assertThat(film.remarks())
                .contains(
                        "C0002.MP4 is not where it was matched any more (session second); put it back, or match it again"
                                + " where it is now; meanwhile another reading of lines 1, 2,"
                                + " 3, 4 and 5 is used")
                .noneMatch(remark -> remark.contains("no camera file is matched"));
    }

    @Test
    void anotherCameraThatShowsTheLinesIsUsedAndSaid() throws ProblemException, IOException {
        Path gone = card("C0002.MP4");
        FilmedReading.match(first, gone, BEFORE, 0);
        Files.delete(gone);
        FilmResult film = film(false);
        assertThat(film.plan().unseen()).isEmpty();
        assertThat(film.remarks())
                .anyMatch(remark -> remark.startsWith("C0002.MP4 is not where it was matched any more (session first)")
                        && remark.endsWith("meanwhile it is done without"));
    }

    @Test
    void aFileThatCannotBeReadOnlyStopsTheLinesThatStandOnIt() throws ProblemException, IOException {
        FilmedReading.writeAgain(second, lesson.toString());
        Path broken = card("C0002.MP4");
        FilmedReading.match(second, broken, BEFORE, 0);
        Files.writeString(broken, "no film");
        assertThat(film(false).plan().clips()).allMatch(clip -> clip.session() == 0);
        Files.delete(first.resolve("footage.json"));
        assertThatThrownBy(() -> film(false))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("C0002.MP4 cannot be read as film or sound")
                .hasMessageContaining("(session second), and nothing else has lines 1, 2, 3, 4 and 5");
    }

    @Test
    void ifEveryCameraIsGoneALineThatNoneShowedIsNamedByItself() throws ProblemException, IOException {
        FilmedReading.writePickup(second, lesson.toString());
        Files.delete(first.resolve("footage.json"));
        Path gone = card("C0002.MP4");
        FilmedReading.match(first, gone, BEFORE, 0);
        Files.delete(gone);
        assertThatThrownBy(() -> film(false))
                .hasMessageContaining("C0002.MP4 is not where it was matched any more (session first)")
                .hasMessageContaining("no camera's file shows line 4")
                .hasMessageNotContaining("no camera's file was matched");
    }

    private Path card(String name) throws IOException {
        return Files.copy(camera, folder.resolve(name));
    }

    private FilmResult film(boolean draft, Integer... leaveOut) throws ProblemException, IOException {
        FilmRequest request = SmallFilm.of(
                lesson,
                Optional.empty(),
                draft,
                Set.of(leaveOut),
                SmallFilm.of(lesson, folder).profile());
        return new FilmService(here, request, progress -> {}, Interruption.NONE)
                .make(FilmObstacle.Told.TERMINAL, obstacle -> {});
    }
}
