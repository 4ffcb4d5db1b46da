package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Warnings;
import org.bookholder.app.home.Home;
import org.bookholder.app.home.HomeRequest;
import org.bookholder.journal.SessionLocks;
import org.bookholder.testing.Browser;
import org.bookholder.testing.FakeEquipment;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The rooms for long work, in a real browser: what a command does is begun, shown and stopped there. */
@Timeout(value = 240, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
final class HomeRoomsTest {
    private final FakeEquipment equipment = new FakeEquipment();

    @TempDir
    private Path folder;

    private Home home;
    private Thread main;
    private volatile boolean interrupted;
    private Browser browser;

    @BeforeEach
    void open() throws Exception {
        Browser.needed();
        Path course = Files.createDirectories(folder.resolve("user/films/wheels"));
        Files.writeString(course.resolve("course.yaml"), "title: A course\n");
        Path lesson = Files.writeString(course.resolve("lesson-1.md"), StoredExamples.script("One wheel"));
        Files.writeString(
                course.resolve("lesson-2.md"), "---\ntitle: Two wheels\n---\nA second lesson of few words.\n");
        StoredExamples.write(
                Files.createDirectories(folder.resolve("data/sessions")).resolve("2026-09-09-0900-one-wheel"),
                lesson.toString(),
                StoredExamples.script("One wheel"));
        Environment here = new Environment(
                Instant::now,
                System::nanoTime,
                ZoneOffset.UTC,
                folder,
                folder.resolve("data"),
                folder.resolve("settings"),
                new SessionLocks(),
                new Warnings(line -> {}),
                equipment);
        home = Home.open(here, new HomeRequest(folder.resolve("user"), Optional.of(course)))
                .orElseThrow();
        main = new Thread(this::work, "main of the page");
        main.start();
        browser = new Browser();
        browser.size(1440, 900);
        browser.open(home.addressForBrowser());
        browser.until("window.homeState && homeState.course?.today && homeState.jobs");
    }

    private void work() {
        while (!interrupted && home.work(() -> interrupted)) {
            LockSupport.parkNanos(10_000_000);
        }
    }

    @AfterEach
    void close() throws InterruptedException {
        interrupted = true;
        if (main != null) {
            main.join();
            home.close();
        }
        if (browser != null) {
            browser.close();
        }
    }

    @Test
    void runningTimesAreWorkedOutInTheBackgroundAndAreThereWhenThePageComesBack() throws IOException {
        room("time");
        browser.click("#work-begin");
        browser.until("homeState.jobs.some((job) => job.step === 'DONE')");
        assertThat(browser.text("#jobs")).contains("Running time", "wheels");
        assertThat(browser.text("#work-jobs")).contains("One wheel", "Two wheels", "words at", "No hard stretches");
        browser.lookAtEverySize("home-time");

        browser.open(String.valueOf(browser.value("location.href")));
        browser.until("document.querySelector('#work-jobs .found')");
        browser.click("#work-jobs .choices button");
        browser.until("homeState.jobs.length === 0 && !document.querySelector('#work-jobs .found')");
        assertThat(browser.errors()).isEmpty();
    }

    private void room(String kind) {
        browser.click("#works a[href='?view=" + kind + "']");
        browser.until("document.querySelector('#work:not([hidden]) #work-begin')");
    }
}
