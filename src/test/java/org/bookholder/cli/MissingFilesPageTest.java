package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.footage.SourceChoices;
import org.bookholder.film.FilmedReading;
import org.bookholder.testing.Browser;
import org.bookholder.testing.FakeEquipment;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/** What the pages say in a real browser of files and folders that are gone: which, and what to do. */
@Timeout(value = 240, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
final class MissingFilesPageTest {
    private static final double BEFORE = 1.51;

    private static Path camera = Path.of("");

    @TempDir
    private Path folder;

    @AutoClose
    private PageAtHome page;

    private Path session;
    private Path gone;
    private Path other;
    private Browser browser;

    @BeforeAll
    static void film(@TempDir Path shared) {
        camera = FilmedReading.camera(shared.resolve("CAM.MP4"), BEFORE);
    }

    @BeforeEach
    void open() throws Exception {
        Browser.needed();
        Path course = Files.createDirectories(folder.resolve("user/noise"));
        Files.createDirectories(folder.resolve("user/cards"));
        Path lesson = Files.writeString(course.resolve("lesson-1.md"), FilmedReading.TEXT);
        Files.writeString(course.resolve("course.yaml"), "title: A course\n");
        session = course.resolve("sessions/first");
        FilmedReading.write(session, lesson.toString());
        gone = card("C0001.MP4");
        other = card("C0002.MP4");
        page = PageAtHome.start(folder, new FakeEquipment(), Optional.of(course));
        browser = page.show();
    }

    private Path card(String name) throws Exception {
        Path card = Files.copy(camera, folder.resolve(name));
        FilmedReading.match(session, card, BEFORE, 0);
        return card;
    }

    @Test
    void theFilmsPageNamesTheFileItsSessionAndTheLinesThatStandOnIt() throws IOException {
        Files.delete(gone);
        Files.delete(other);
        browser.press("v");
        browser.until("window.filmState && filmState().board");
        String sentence =
                "2 files are not where they were matched any more, and nothing else has their lines: C0001.MP4"
                        + " (session first, lines 1, 2, 3, 4 and 5), C0002.MP4 (session first, lines 1, 2, 3, 4 and 5)";
        assertThat(browser.text("#film-obstacles li"))
                .isEqualTo(sentence + ". What to do: put them back, or match them again where they are now, leave the"
                        + " lines out, or make a draft.");
        assertThat(browser.text("#film-files"))
                .isEqualTo(
                        "Picture: none. Sound: the take's recording, as C0001.MP4 is not where it was matched any more.");
        assertThat(browser.value("document.querySelector('#film-final').disabled"))
                .isEqualTo(true);
        assertThat(browser.text("#film-why"))
                .as("beside the button")
                .isEqualTo("Not yet: 1 thing in the way, listed at the top of this page.");
        browser.lookAtEverySize("film-lost");
    }

    @Test
    void theMatchPageSaysThatTheChosenFileIsGoneAndWhatIsUsedInstead() throws Exception {
        Environment here = StoredExamples.here(folder);
        new SourceChoices(here)
                .choose(
                        session,
                        new SourceChoices.Wish(List.of(1), Optional.of("C0001.MP4"), Optional.of("C0001.MP4")));
        Files.delete(gone);
        matchPage();
        assertThat(browser.text("#source-1-picture-why"))
                .isEqualTo("C0002.MP4, instead of C0001.MP4, which you chose and which is gone");
        assertThat(browser.text("#source-1-sound-why"))
                .isEqualTo("C0002.MP4, instead of C0001.MP4, which you chose and which is gone");
        assertThat(browser.value("document.querySelector('#source-1-picture').selectedOptions[0].text"))
                .isEqualTo("C0001.MP4 can\u2019t be used, so it\u2019s chosen for you");
        assertThat(browser.text("#sources"))
                .contains(
                        "the picture you chose, C0001.MP4, is not where it was matched: put it back, or match it where it"
                                + " is now; meanwhile C0002.MP4 is used");
        browser.lookAtEverySize("match-lost");
    }

    @Test
    void aRoomThatRefusesNamesTheFileByItsName() throws IOException {
        matchPage();
        Files.delete(gone);
        browser.choose("#source-1-picture", "C0001.MP4");
        browser.until("document.querySelector('#sources-wrong').textContent");
        assertThat(browser.text("#sources-wrong"))
                .isEqualTo("C0001.MP4: is not there any more; put it back, or match it where it is now.");
    }

    @Test
    void anActionThatIsRefusedNamesTheFolderByItsName() throws IOException {
        Path lessons = Files.createDirectories(folder.resolve("user/aside"));
        Files.writeString(lessons.resolve("lesson.md"), "One line.\n");
        browser.press("o");
        browser.until("document.querySelector('#folder[open] .folders button')");
        browser.press(Keys.ENTER);
        browser.until("document.querySelector('#folder .path').textContent.endsWith('aside')");
        Files.delete(lessons.resolve("lesson.md"));
        Files.delete(lessons);
        browser.click("#folder-open");
        browser.until("document.querySelector('#folder-wrong').textContent");
        assertThat(browser.text("#folder-wrong")).contains("aside: there is no such folder; choose another one");
    }

    private void matchPage() {
        browser.click("#works a[href='?view=match']");
        browser.until("document.querySelector('#source-1-picture')");
    }
}
