package org.bookholder.view.gl;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.bookholder.problem.ProblemException;
import org.bookholder.view.DisplayLostException;
import org.bookholder.view.SampleState;
import org.bookholder.view.settings.WindowPlace;
import org.bookholder.view.settings.WindowSettings;

/**
 * The reading window on an X server that dies at the worst moment: between two looks at whether it is there, and something
 * else fails at once. A program of its own, since a process knows one display only.
 */
public final class DyingDisplay {
    private DyingDisplay() {}

    /** Fails with what is wrong; the argument is the X server's process id. */
    public static void main(String[] args) throws ProblemException {
        ProcessHandle server = ProcessHandle.of(Long.parseLong(args[0])).orElseThrow();
        SampleState lesson = SampleState.lesson();
        WindowSettings settings = WindowSettings.defaults();
        WindowPlace place = WindowPlace.windowed(320, 240);
        assertThat(Displays.all(() -> {})).hasSize(1);
        ReadingWindow window = ReadingWindow.open(settings, lesson.script(), place);
        IllegalStateException broken = new IllegalStateException("a picture that broke");
        assertThatThrownBy(() -> window.run(
                        () -> {
                            server.destroyForcibly();
                            server.onExit().join();
                            throw broken;
                        },
                        command -> {},
                        System::nanoTime))
                .isInstanceOf(DisplayLostException.class)
                .hasCause(broken);
        window.close();
        window.turnTo(lesson.script(), settings);
        assertThatThrownBy(() -> window.run(lesson::state, command -> {}, System::nanoTime))
                .isInstanceOf(DisplayLostException.class);
        assertThatThrownBy(() -> ReadingWindow.open(settings, lesson.script(), place))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("the display is gone");
        assertThatThrownBy(() -> Displays.all(() -> {}))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("the display is gone");
        assertThat(ReadingWindow.unavailable()).contains("the display is gone");
    }
}
