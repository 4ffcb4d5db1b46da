package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import org.bookholder.app.environment.FileWish;
import org.bookholder.testing.Browser;
import org.bookholder.testing.FakeEquipment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** Files and folders chosen in the system's dialog, from the page. */
@Timeout(value = 120, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class HomeChooserTest {
    private final FakeEquipment equipment = new FakeEquipment();
    private final CountDownLatch takesItsTime = new CountDownLatch(1);

    @TempDir
    private Path folder;

    private List<Path> choose(FileWish wish) {
        if (wish.folder()) {
            return List.of(folder.resolve("card/wheels"));
        }
        try {
            takesItsTime.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        return List.of(folder.resolve("card/film.mp4"));
    }

    @Test
    void aCourseAndAFilmOutsideOfTheUsersHomeAreChosenInTheSystemsDialog() throws Exception {
        Browser.needed();
        Path course = Files.createDirectories(folder.resolve("card/wheels"));
        Files.writeString(course.resolve("lesson-1.md"), "One line.\n");
        Path film = Files.createFile(folder.resolve("card/film.mp4"));
        equipment.hasChooser(this::choose);
        try (PageAtHome page = PageAtHome.start(folder, equipment, Optional.empty())) {
            Browser browser = page.show();
            browser.click("#open");
            browser.until("homeState.course.name && !document.querySelector('#folder').open");
            assertThat(browser.value("homeState.course.folder"))
                    .isEqualTo(course.toRealPath().toString());

            browser.value("document.dispatchEvent(new CustomEvent('go', { detail: 'check' }))");
            browser.click("#w-files-choose");
            browser.until("document.querySelector('#folder[open] #folder-list')");
            browser.lookAtEverySize("home-chooser");
            takesItsTime.countDown();
            browser.until("document.querySelector('#w-files li')");
            assertThat(browser.value("document.querySelector('#w-files li').dataset.path"))
                    .isEqualTo(film.toString());
            assertThat(browser.value("document.querySelector('#folder').open")).isEqualTo(false);
            assertThat(browser.errors()).isEmpty();
        }
    }

    @Test
    void thePagesOwnListIsThereInsteadWhileTheDialogIsOpen() throws Exception {
        Browser.needed();
        Files.createDirectories(folder.resolve("user"));
        Files.createFile(folder.resolve("user/own.mp4"));
        equipment.hasChooser(this::choose);
        try (PageAtHome page = PageAtHome.start(folder, equipment, Optional.empty())) {
            Browser browser = page.show();
            browser.value("document.dispatchEvent(new CustomEvent('go', { detail: 'check' }))");
            browser.click("#w-files-choose");
            browser.until("document.querySelector('#folder[open] #folder-list')");
            browser.click("#folder-list");
            browser.until("document.querySelector('#folder input[value$=\"own.mp4\"]')");
            browser.click("#folder input");
            browser.click("#folder-open");
            browser.until("document.querySelector('#w-files li')");
            takesItsTime.countDown();
            assertThat(browser.value("document.querySelectorAll('#w-files li').length"))
                    .isEqualTo(1L);
        }
    }
}
