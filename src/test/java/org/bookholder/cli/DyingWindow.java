package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.concurrent.atomic.AtomicInteger;
import org.bookholder.app.environment.Equipment;
import org.bookholder.problem.ProblemException;
import org.bookholder.view.DisplayLostException;
import org.bookholder.view.SampleState;
import org.bookholder.view.settings.WindowPlace;
import org.bookholder.view.settings.WindowSettings;
import org.bookholder.view.settings.WindowWish;

/**
 * The program's window on an X server that dies when the next picture is about to be drawn. A program of its own, since a process knows
 * one display only.
 */
public final class DyingWindow {
    /** By this picture the window has been shown for a while. */
    private static final int PICTURE = 10;

    private DyingWindow() {}

    /** Fails with what is wrong; the argument is the X server's process id. */
    public static void main(String[] args) throws ProblemException {
        ProcessHandle server = ProcessHandle.of(Long.parseLong(args[0])).orElseThrow();
        SampleState lesson = SampleState.lesson();
        WindowSettings settings = WindowSettings.defaults();
        WindowWish wish = new WindowWish(settings, WindowPlace.windowed(320, 240));
        WindowsOfMachine windows = new WindowsOfMachine();
        Equipment.Window window = windows.open(wish, lesson.script());
        AtomicInteger pictures = new AtomicInteger();
        assertThatThrownBy(() -> window.run(
                        () -> {
                            int picture = pictures.incrementAndGet();
                            if (picture == PICTURE) {
                                server.destroyForcibly();
                                server.onExit().join();
                            }
                            return lesson.at(1 + picture % 8, 1).state();
                        },
                        command -> {},
                        System::nanoTime,
                        () -> false))
                .isInstanceOf(DisplayLostException.class);
        window.close();
        window.turnTo(lesson.script(), settings);
        assertThatThrownBy(() -> window.run(lesson::state, command -> {}, System::nanoTime, () -> false))
                .isInstanceOf(DisplayLostException.class);
        assertThatThrownBy(window::wish).isInstanceOf(DisplayLostException.class);
        assertThatThrownBy(() -> windows.open(wish, lesson.script()))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("the display is gone");
        assertThatThrownBy(windows::displays)
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("the display is gone");
    }
}
