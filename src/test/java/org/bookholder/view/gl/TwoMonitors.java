package org.bookholder.view.gl;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.bookholder.problem.ProblemException;
import org.bookholder.view.Frame;
import org.bookholder.view.SampleState;
import org.bookholder.view.StandIn;
import org.bookholder.view.input.Action;
import org.bookholder.view.settings.WindowPlace;
import org.bookholder.view.settings.WindowSettings;

/**
 * The reading window on a display of two monitors of X.Org's dummy driver: one of 1920 by 1080, and right of it one of 1280
 * by 720, which is pulled out and plugged in again. A program of its own, since a process knows one display only.
 */
public final class TwoMonitors {
    private static final long PATIENCE_NANOS = 20_000_000_000L;

    private final StandIn session = new StandIn(SampleState.lesson());
    private final ReadingWindow window;

    private TwoMonitors(ReadingWindow window) {
        this.window = window;
    }

    /** Fails with what is wrong. */
    public static void main(String[] args) throws ProblemException {
        plugIn();
        SampleState sample = SampleState.lesson();
        try (ReadingWindow window = ReadingWindow.open(
                WindowSettings.defaults(),
                sample.script(),
                WindowPlace.windowed().on(2).filled())) {
            new TwoMonitors(window).walk();
        }
    }

    private void walk() {
        until("it opens on the second monitor", v -> is(v, 1280, 720));
        window.act(Action.MONITOR);
        until("the key brings it to the first", v -> is(v, 1920, 1080));
        assertThat(window.place().monitor()).isEqualTo(1);
        window.act(Action.MONITOR);
        until("and round to the second again", v -> is(v, 1280, 720));
        xrandr("--output", "DUMMY1", "--off");
        connect("0");
        until("pulled out, it fills the first", v -> is(v, 1920, 1080));
        plugIn();
        until("plugged in, it is back", v -> is(v, 1280, 720));
        window.act(Action.FULL_SCREEN);
        until(
                "a window of the second",
                v -> !window.place().fullScreen() && v.geometry().width() <= 1280);
        assertThat(window.place().monitor()).isEqualTo(2);
        xrandr("--output", "DUMMY1", "--off");
        connect("0");
        until("pulled out, the window comes to the first", v -> window.isOnAMonitor());
    }

    private static boolean is(Frame view, int width, int height) {
        return view.geometry().width() == width && view.geometry().height() == height;
    }

    private void until(String what, Predicate<Frame> wanted) {
        long began = System.nanoTime();
        window.run(
                session::state,
                session::tell,
                System::nanoTime,
                () -> window.shown().filter(wanted).isPresent() || System.nanoTime() - began > PATIENCE_NANOS);
        assertThat(window.shown())
                .as(what)
                .hasValueSatisfying(view -> assertThat(wanted.test(view))
                        .as(what + ": " + view.geometry())
                        .isTrue());
    }

    /** The server says that a monitor is there only after it was asked once more. */
    private static void plugIn() {
        connect("1");
        said("--addmode", "DUMMY1", "1280x720");
        xrandr("--output", "DUMMY1", "--mode", "1280x720", "--right-of", "DUMMY0");
        said("--query");
    }

    /** xrandr asks for a property that the driver does not know, and complains when all is done. */
    private static void connect(String value) {
        said("--output", "DUMMY1", "--set", "CONNECTED", value);
        said("--query");
    }

    private static void xrandr(String... arguments) {
        String said = said(arguments);
        assertThat(said).isEmpty();
    }

    private static String said(String... arguments) {
        List<String> command = new ArrayList<>(List.of("xrandr"));
        command.addAll(List.of(arguments));
        try {
            Process process =
                    new ProcessBuilder(command).redirectErrorStream(true).start();
            String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            process.waitFor();
            return said;
        } catch (IOException e) {
            throw new IllegalStateException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }
}
