package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;
import org.bookholder.film.FilmedReading;
import org.bookholder.testing.Browser;
import org.bookholder.testing.FakeEquipment;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Today's button is that of the step which the lesson asks for, and leads where that is done. */
final class NextStepPageTest {
    @TempDir
    private Path folder;

    @AutoClose
    private @Nullable PageAtHome page;

    private Path lesson;
    private Path course;

    @BeforeEach
    void write() throws Exception {
        Browser.needed();
        course = Files.createDirectories(folder.resolve("user/noise"));
        lesson = Files.writeString(course.resolve("lesson-1.md"), FilmedReading.TEXT);
        Files.writeString(course.resolve("course.yaml"), "title: A course\n");
        FilmedReading.write(course.resolve("sessions/first"), lesson.toString());
        FilmedReading.writePickup(course.resolve("sessions/second"), lesson.toString());
    }

    @Test
    void aRecordedLessonLeadsToItsFilm() throws Exception {
        Browser browser = open();
        assertThat(browser.text("#do-next")).startsWith("Make its film");
        browser.click("#do-next");
        browser.until("window.filmState && filmState().board");
        assertThat(browser.value("filmState().place")).isEqualTo(lesson.toString());
        assertThat(browser.value("location.search")).isEqualTo("?view=film");
        assertThat(browser.text("#film-why"))
                .as("beside the button that is off")
                .isEqualTo("Not yet: second: no camera's file was matched with it.");
    }

    @Test
    void anExportThatWasNotCheckedLeadsToItsCheckWithTheFileChosen() throws Exception {
        Path film = Files.writeString(
                Files.createDirectories(course.resolve("exports")).resolve("lesson-1.mp4"), "film");
        Browser browser = open();
        assertThat(browser.text("#do-next")).startsWith("Check it");
        browser.click("#do-next");
        browser.until("document.querySelector('#w-files li')");
        assertThat(browser.value("document.querySelector('#w-files li').dataset.path"))
                .isEqualTo(film.toString());
    }

    @Test
    void anAddressOfNoPageShowsToday() throws Exception {
        Browser browser = open();
        browser.open(browser.value("location.origin") + "/?view=nosuch");
        browser.until("window.homeState && homeState.course");
        assertThat(browser.value("document.querySelector('#today').hidden")).isEqualTo(false);
    }

    private Browser open() throws Exception {
        page = PageAtHome.start(folder, new FakeEquipment(), Optional.of(course));
        Browser browser = Objects.requireNonNull(page).show();
        browser.until("document.querySelector('#do-next')");
        return browser;
    }
}
