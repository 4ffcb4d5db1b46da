package org.bookholder.app.film;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.environment.OperationInterrupted;
import org.bookholder.film.FilmedReading;
import org.bookholder.film.picture.ClipStore;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** What becomes of a film that is there when another is asked for, and of one that is broken off. */
@Execution(ExecutionMode.CONCURRENT)
final class FilmAgainTest {
    /** The camera was switched on so many seconds before the take. */
    private static final double BEFORE = 1.51;

    private static Path camera = Path.of("");

    @TempDir
    private Path folder;

    private Path session;
    private Path profile;
    private Environment here;

    @BeforeAll
    static void film(@TempDir Path shared) {
        camera = FilmedReading.camera(shared.resolve("CAM1.MP4"), BEFORE);
    }

    @BeforeEach
    void write() throws ProblemException, IOException {
        session = folder.resolve("session");
        profile = FilmedReading.smallProfile(folder.resolve("small.txt"), 180);
        FilmedReading.write(session, folder.resolve("lesson.md").toString());
        here = StoredExamples.here(folder);
    }

    @Test
    void aSecondFilmReplacesNothing() throws ProblemException {
        FilmedReading.match(session, camera, BEFORE, 0);
        Path first = film(request(true)).made().file();
        FilmResult second = film(request(true));
        assertThat(first).isEqualTo(folder.resolve("out/a.mp4"));
        assertThat(second.made().file()).isEqualTo(folder.resolve("out/a-2.mp4"));
        assertThat(folder.resolve("out").toFile().list())
                .containsExactlyInAnyOrder(
                        "a.mp4", "a.vtt", "a.srt", "a.txt", "a-2.mp4", "a-2.vtt", "a-2.srt", "a-2.txt");
    }

    @Test
    void aFilmIsNotMadeTwiceOfTheSame() throws ProblemException, IOException {
        FilmedReading.match(session, camera, BEFORE, 0);
        FilmRequest request = request(false);
        FilmResult first = film(request);
        assertThat(first.already()).isFalse();
        FilmResult again = film(request);
        assertThat(again.already()).isTrue();
        assertThat(again.made()).isEqualTo(first.made());
        assertThat(FilmText.said(again)).startsWith("a.mp4 is this film already");
        FilmedReading.match(session, camera, BEFORE + 0.4, 0);
        assertThat(film(request).made().file()).as("something has changed").isEqualTo(folder.resolve("out/a-2.mp4"));
        Files.writeString(folder.resolve("out/a-2.mp4"), "cut short");
        assertThat(film(request).made().file())
                .as("the last one is not whole any more")
                .isEqualTo(folder.resolve("out/a-3.mp4"));
    }

    /** A folder without course.yaml is a course, too. */
    @Test
    void theFilmOfALooseLessonGoesIntoExportsBesideItAndOneMadeBeforeIsFound() throws ProblemException, IOException {
        FilmedReading.match(session, camera, BEFORE, 0);
        FilmRequest usual = SmallFilm.of(session, folder);
        Path before = film(usual).made().file();
        assertThat(before).as("without its file").isEqualTo(session.resolve("film/noise-to-be-cut.mp4"));
        Path lesson = Files.writeString(folder.resolve("lesson.md"), FilmedReading.TEXT);
        FilmResult made = film(usual);
        assertThat(made.made().file()).isEqualTo(folder.resolve("exports/lesson.mp4"));
        assertThat(film(usual).already()).isTrue();

        // As it lay before: the same film in the session.
        Path old = session.resolve("film/lesson.mp4");
        for (String ending : List.of("mp4", "vtt", "srt", "txt")) {
            Files.move(folder.resolve("exports/lesson." + ending), session.resolve("film/lesson." + ending));
        }
        Path notes = session.resolve("film/films.json");
        Files.writeString(
                notes,
                Files.readString(notes)
                        .replace(
                                folder.resolve("exports").toString(),
                                session.resolve("film").toString()));
        FilmResult found = film(usual);
        assertThat(found.already()).isTrue();
        assertThat(found.made().file()).isEqualTo(old);
        assertThat(lesson).exists();
    }

    @Test
    void stoppedInTheMiddleItLeavesNothing() throws ProblemException {
        FilmedReading.match(session, camera, BEFORE, 0);
        AtomicInteger asked = new AtomicInteger();
        Interruption later = new Interruption(() -> asked.incrementAndGet() > 60);
        FilmService service = new FilmService(here, request(false), p -> {}, later);
        assertThatThrownBy(() -> service.make(FilmObstacle.Told.TERMINAL, obstacle -> {}))
                .isInstanceOf(OperationInterrupted.class);
        assertThat(folder.resolve("out")).isEmptyDirectory();
    }

    @Test
    void stoppedItSaysWhetherPiecesAreKept() throws ProblemException {
        FilmedReading.match(session, camera, BEFORE, 0);
        FilmService early = new FilmService(here, request(false), p -> {}, new Interruption(() -> true));
        assertThatThrownBy(() -> early.make(FilmObstacle.Told.TERMINAL, obstacle -> {}))
                .isInstanceOf(OperationInterrupted.class);
        assertThat(early.ifStopped()).isEqualTo("no film was made, and nothing is left of it");
        ClipStore pieces = new ClipStore(session.resolve("film/clips"));
        FilmService later = new FilmService(here, request(false), p -> {}, new Interruption(pieces::hasAny));
        assertThatThrownBy(() -> later.make(FilmObstacle.Told.TERMINAL, obstacle -> {}))
                .isInstanceOf(OperationInterrupted.class);
        assertThat(later.ifStopped()).startsWith("no film was made; the pieces that were finished are kept");
        assertThat(pieces.hasAny()).isTrue();
    }

    private FilmRequest request(boolean draft) {
        return SmallFilm.of(session, Optional.of(folder.resolve("out/a.mp4")), draft, Set.of(), Optional.of(profile));
    }

    private FilmResult film(FilmRequest request) throws ProblemException {
        return new FilmService(here, request, progress -> {}, Interruption.NONE)
                .make(FilmObstacle.Told.TERMINAL, obstacle -> {});
    }
}
