package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.bookholder.app.session.StoredSession;
import org.bookholder.film.FilmReadBack;
import org.bookholder.film.FilmedReading;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.FilmChoices;
import org.bookholder.session.SessionState;
import org.bookholder.testing.Browser;
import org.bookholder.testing.FakeEquipment;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.openqa.selenium.Keys;

/** The film's page in a real browser: from a line without anything to use to a finished film, by keys only. */
@Timeout(value = 240, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class FilmPageTest {
    private static final double BEFORE = 1.51;

    private static Path camera = Path.of("");

    @TempDir
    private Path folder;

    @AutoClose
    private PageAtHome page;

    private Path course;
    private Path session;
    private Browser browser;

    @BeforeAll
    static void film(@TempDir Path shared) {
        camera = FilmedReading.camera(shared.resolve("CAM.MP4"), BEFORE);
    }

    @BeforeEach
    void open() throws Exception {
        Browser.needed();
        course = Files.createDirectories(folder.resolve("user/noise"));
        Path lesson = Files.writeString(course.resolve("lesson-1.md"), FilmedReading.TEXT);
        Files.writeString(course.resolve("course.yaml"), "title: A course\ndelivery: small.txt\n");
        FilmedReading.smallProfile(course.resolve("small.txt"), 90);
        session = course.resolve("sessions/first");
        FilmedReading.writeWithGap(session, lesson.toString());
        FilmedReading.match(session, camera, BEFORE, 0);
        page = PageAtHome.start(folder, new FakeEquipment(), Optional.of(course));
        browser = page.show();
        browser.press("v");
        browser.until("window.filmState && filmState().board");
    }

    @Test
    void fromAGapToAFinishedFilmByKeysOnly() throws IOException, ProblemException {
        assertThat(browser.value("filmState().board.missing")).isEqualTo(List.of(5L));
        assertThat(browser.text("#film-line-5 .what")).contains("broken off");
        assertThat(browser.value("document.querySelector('#film-final').disabled"))
                .isEqualTo(true);
        browser.lookAtEverySize("film");

        browser.press(Keys.END);
        browser.press("x");
        browser.until("filmState().board.lines[4].out");
        assertThat(browser.text("#film-line-5 .what")).contains("left out on purpose");
        press(Keys.HOME, Keys.ARROW_DOWN, "-");
        browser.until("filmState().board.lines[1].pauseSet === 300");
        double shorter = seconds("filmState().board.lines[1].used.pause");
        browser.press("+");
        browser.until("filmState().board.lines[1].used.pause > " + (shorter + 0.05));
        browser.press("+");
        browser.until("document.querySelector('#film-said').textContent.includes('no more quiet was recorded')");
        assertThat(kept().remarks().film(2).pause())
                .as("what could not be had is not kept")
                .isEqualTo(400);
        press(Keys.ARROW_DOWN, "a");
        browser.until("filmState().board.lines[2].used.ordinal === 3");
        assertThat(kept().lines().notes(3).best().orElseThrow().ordinal()).isEqualTo(3);
        browser.press("m");
        browser.until("filmState().board.draft?.fresh");
        browser.until("document.querySelector('#film-video').duration > 5");
        assertThat(seconds("document.querySelector('#film-video').duration"))
                .as("the draft plays on the page, and is as long as the page says")
                .isCloseTo(seconds("filmState().board.seconds"), within(0.1));
        browser.lookAtEverySize("film-draft");
        press(Keys.HOME, "x");
        browser.until("!filmState().board.draft.fresh");
        assertThat(browser.text("#film-draft-said")).contains("before your last change");
        browser.press("u");
        browser.until("filmState().board.draft.fresh");

        browser.press("g");
        browser.until("homeState.jobs.some(job => job.title === 'Film' && job.step === 'DONE')");
        FilmReadBack film = FilmReadBack.of(course.resolve("exports/lesson-1.mp4"), folder);
        assertThat(film.pictures() / 25.0).isCloseTo(seconds("filmState().board.seconds"), within(0.05));
        assertThat(errors()).isEmpty();
    }

    @Test
    void placesAreMovedByPointerAndArrowsAndTakenBack() throws ProblemException {
        browser.until("document.querySelector('#film-wave path')?.getAttribute('d').length > 100");
        double out = seconds("filmState().board.lines[0].used.out");
        double before = seconds("filmState().board.lines[0].used.in");
        browser.value("document.querySelector('#film-cut-in').focus()");
        press(Keys.ARROW_RIGHT, Keys.ARROW_RIGHT, Keys.ARROW_RIGHT);
        browser.until("Math.abs(filmState().board.lines[0].used.in - " + (before + 0.03) + ") < 0.001");
        browser.drag("#film-cut-out", -20);
        browser.until("filmState().board.lines[0].used.out < " + out);
        assertThat(kept().remarks().film(1).out())
                .map(place -> place.at().seconds())
                .hasValueSatisfying(
                        at -> assertThat(at).isCloseTo(seconds("filmState().board.lines[0].used.out"), within(0.001)));
        undoMoves();
        assertThat(browser.value("filmState().board.lines[0].moved")).isEqualTo(false);
        assertThat(seconds("filmState().board.lines[0].used.in")).isEqualTo(before);
        assertThat(kept().remarks().film(1)).isEqualTo(FilmChoices.NONE);
    }

    @Test
    void aPlaceThatIsDraggedTooFarStopsInsideItsLine() throws ProblemException {
        browser.until("document.querySelector('#film-wave path')?.getAttribute('d').length > 100");
        browser.drag("#film-cut-in", 1000);
        browser.until("filmState().board.lines[0].moved");
        assertThat(browser.text("#film-places")).contains("No further: nothing of the line would be left.");
        assertThat(seconds("filmState().board.lines[0].used.in"))
                .isCloseTo(seconds("filmState().board.lines[0].used.end"), within(0.06));
        assertThat(browser.text("#film-line-1 .what")).contains("cut by hand").doesNotContain("broken off");
        press("u");
        browser.until("!filmState().board.lines[0].moved");
        assertThat(kept().remarks().film(1)).isEqualTo(FilmChoices.NONE);
    }

    @Test
    void aPointIsSetOnTheDraftAndTakenBack() throws IOException, ProblemException {
        browser.press("m");
        browser.until("filmState().board.draft?.fresh");
        browser.until("!document.querySelector('#film-point').disabled");
        browser.press("p");
        browser.until("document.activeElement.matches('.film-point')");
        browser.lookAtEverySize("film-point");
        press(Keys.ARROW_RIGHT, Keys.ARROW_RIGHT, Keys.ARROW_DOWN, Keys.ENTER);
        browser.until("filmState().board.lines[0].used.point.across === 520");
        assertThat(kept().remarks().film(0).points())
                .containsExactly(Map.entry("CAM.MP4", new FilmChoices.Point(520, 343)));
        assertThat(browser.value("filmState().board.draft.fresh")).isEqualTo(false);
        press("u");
        browser.until("filmState().board.lines[0].used.point.across === 500 && filmState().board.draft.fresh");
        assertThat(kept().remarks().film(0).points()).isEmpty();
        assertThat(errors()).isEmpty();
    }

    /** What went wrong on the page. A beginning may go while the page fetches it: the draft is whole then, and the page shows that. */
    private List<String> errors() {
        return browser.errors().stream()
                .filter(error -> !error.contains("/begun-"))
                .toList();
    }

    @Test
    void theBeginningOfADraftIsNotShownForAnotherFilm() throws IOException {
        // A draft of the lesson that takes long, as the page takes it to be.
        Path drafts = Files.createDirectories(session.resolve("film/draft-of-lesson"));
        Files.writeString(drafts.resolve("begun-1.mp4"), "pictures");
        browser.awaited("import('./filmdraft.js').then(({ watchDraft }) => watchDraft(true, () => filmState().place))");
        browser.until("document.querySelector('#film-video').src.endsWith('/begun-1.mp4')");
        assertThat(browser.text("#film-draft-said")).contains("The beginning of the new draft");
        browser.value("(() => { const all = document.querySelector('#film-place'); all.selectedIndex = 1;"
                + " return all.dispatchEvent(new Event('change')); })()");
        browser.until("document.querySelector('#film-video').hidden");
        assertThat(browser.text("#film-draft-said")).contains("No draft yet");
        assertThat(browser.value("document.querySelector('#film-video').hasAttribute('src')"))
                .isEqualTo(false);
    }

    @Test
    void onlyWhatChangedIsMadeAgain() throws IOException {
        browser.press("m");
        browser.until("homeState.jobs.filter(job => job.step === 'DONE').length === 1");
        List<String> first = clips();
        press(Keys.HOME, Keys.ARROW_DOWN, Keys.ARROW_DOWN, "z");
        browser.until("filmState().board.lines[2].framing !== 'PLANNED'");
        browser.press("m");
        browser.until("homeState.jobs.filter(job => job.step === 'DONE').length === 2");
        assertThat(first).hasSizeGreaterThan(1);
        assertThat(clips().stream().filter(first::contains).count())
                .as("clips of the first draft that are used in the second")
                .isGreaterThanOrEqualTo(first.size() - 1);
        assertThat(clips()).isNotEqualTo(first);
    }

    @Test
    void theSoundOfATakeIsChosenWhereFilesAreMatchedAndTakenBack() throws ProblemException, IOException {
        browser.click("#works a[href='?view=match']");
        browser.until("document.querySelector('#source-1-sound')");
        assertThat(browser.text("#source-1-picture-why")).isEqualTo("CAM.MP4, the only one that shows it");
        assertThat(browser.text("#source-1-sound-why"))
                .isEqualTo("CAM.MP4, the camera's own sound, as no recorder covers it");
        browser.lookAtEverySize("match-sources");
        browser.value("document.querySelector('#source-1-sound').focus()");
        press(Keys.END);
        browser.until("document.querySelector('#source-1-sound').value === 'take'");
        browser.until(
                "document.activeElement.id === 'source-1-sound'"
                        + " && document.querySelector('#source-1-sound-why').textContent === \"the take's recording, as you chose\"");
        assertThat(kept().remarks().film(0).sound(1)).hasValue(FilmChoices.TAKES);
        browser.click("#sources-undo");
        browser.until("document.querySelector('#source-1-sound').value === 'auto'");
        assertThat(kept().remarks().film(0)).isEqualTo(FilmChoices.NONE);
        assertThat(errors()).isEmpty();
    }

    private void press(CharSequence... keys) {
        for (CharSequence key : keys) {
            browser.press(key);
        }
    }

    /** Takes back one move of the first line's places after the other; a pause between two arrows makes two of them. */
    private void undoMoves() {
        String places = "filmState().board.lines[0].used.in + ' ' + filmState().board.lines[0].used.out";
        while (Boolean.TRUE.equals(browser.value("Boolean(filmState().board.undo)"))) {
            Object before = browser.value(places);
            browser.press("u");
            browser.until(places + " !== '" + before + "'");
        }
    }

    private double seconds(String expression) {
        return ((Number) browser.value(expression)).doubleValue();
    }

    /** The clips that are kept, with the time at which they were made. */
    private List<String> clips() throws IOException {
        try (Stream<Path> files = Files.list(session.resolve("film/draft-clips"))) {
            return files.map(file -> file.getFileName() + " of " + file.toFile().lastModified())
                    .sorted()
                    .toList();
        }
    }

    private SessionState kept() throws ProblemException {
        try (StoredSession kept = StoredSession.open(StoredExamples.here(folder), session)) {
            return kept.state();
        }
    }
}
