package org.bookholder.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.home.Home;
import org.bookholder.app.home.HomeRequest;
import org.bookholder.app.home.RunningHome;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.Shutdown;

/** Opens the program's own page and stays behind it; brings it up again if it is open already. */
final class HomePage {
    private static final long LOOK_MILLIS = 100;

    /** So often it is looked whether a program that has just been started answers. */
    private static final int TRIES = 50;

    private final Environment here;
    private final Terminal terminal;

    HomePage(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    /** Shows it, in a browser if {@code inBrowser}; returns the exit status when it has ended. */
    int show(Optional<Path> course, boolean inBrowser) throws ProblemException, InterruptedException {
        try (Shutdown shutdown = Shutdown.onInterrupt(() -> {})) {
            for (int i = 0; i < TRIES && !shutdown.asked(); i++) {
                Optional<Home> opened = Home.open(here, new HomeRequest(Machine.userHome(), course));
                if (opened.isPresent()) {
                    try (Home home = opened.get()) {
                        stay(home, shutdown, inBrowser);
                    }
                    return 0;
                }
                Optional<RunningHome> running = RunningHome.find(here);
                if (running.isPresent()) {
                    bringUp(running.get(), course, shutdown, inBrowser);
                    return 0;
                }
                // Another process holds the lock: it is just starting, or just ending.
                if (shutdown.await(LOOK_MILLIS)) {
                    break;
                }
            }
        }
        throw new ProblemException(
                "another Bookholder of yours is running and does not answer",
                here.data().resolve("home").toString(),
                "end it, or restart the machine, and start Bookholder again");
    }

    private void stay(Home home, Shutdown shutdown, boolean inBrowser) {
        print(home.address());
        if (inBrowser) {
            open(home.addressForBrowser(), shutdown);
        }
        while (!shutdown.asked() && home.work(shutdown::asked)) {
            if (shutdown.await(LOOK_MILLIS)) {
                return;
            }
        }
    }

    private void bringUp(RunningHome running, Optional<Path> course, Shutdown shutdown, boolean inBrowser)
            throws InterruptedException {
        print(running.address());
        Optional<RunningHome.Shown> shown = running.show(course);
        shown.map(RunningHome.Shown::refused)
                .filter(refused -> !refused.isEmpty())
                .ifPresent(terminal::warn);
        shown.filter(given -> inBrowser).ifPresent(given -> open(given.address(), shutdown));
    }

    private void print(String address) {
        terminal.out().println("Home: " + address);
        terminal.out().flush();
    }

    private void open(String address, Shutdown shutdown) {
        if (!SystemBrowser.ofMachine().open(address, shutdown::await)) {
            terminal.warn("no browser could be opened; open the address above yourself");
        }
    }
}
