package org.bookholder.cli;

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
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.Helpers;
import org.bookholder.testing.Browser;
import org.bookholder.testing.FakeEquipment;

/** The program's own page in a real browser, with the program behind it; all its folders lie in one. */
final class PageAtHome implements AutoCloseable {
    private final Home home;
    private final Browser browser;
    private final Thread main;
    private volatile boolean interrupted;

    private PageAtHome(Home home) {
        this.home = home;
        browser = new Browser();
        main = new Thread(this::work, "main of the page");
    }

    /** Starts the program and a browser that shows nothing yet. The program begins with a course if one is given. */
    static PageAtHome start(Path folder, FakeEquipment equipment, Optional<Path> course)
            throws IOException, ProblemException {
        Environment here = new Environment(
                Instant::now,
                System::nanoTime,
                ZoneOffset.UTC,
                folder,
                folder.resolve("data"),
                folder.resolve("settings"),
                new SessionLocks(),
                new Warnings(line -> {}),
                new Helpers(1),
                equipment);
        Path user = Files.createDirectories(folder.resolve("user"));
        PageAtHome page =
                new PageAtHome(Home.open(here, new HomeRequest(user, course)).orElseThrow());
        page.main.start();
        return page;
    }

    /** Opens the page in a window of 1440 by 900 pixels; returns when it knows the courses. */
    Browser show() {
        browser.size(1440, 900);
        browser.open(home.addressForBrowser());
        browser.until("window.homeState && homeState.courses");
        return browser;
    }

    /** The address for another browser of this user. */
    String address() {
        return home.addressForBrowser();
    }

    private void work() {
        while (!interrupted && home.work(() -> interrupted)) {
            LockSupport.parkNanos(10_000_000);
        }
    }

    /** Waits until the page has ended the program; whether it stays ended. */
    boolean endsByItself() throws InterruptedException {
        main.join();
        return !home.work(() -> false);
    }

    @Override
    public void close() {
        interrupted = true;
        try {
            main.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        home.close();
        browser.close();
    }
}
