package org.bookholder.view.gl;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Command;
import org.bookholder.testing.Needs;
import org.bookholder.view.SampleState;
import org.bookholder.view.settings.WindowPlace;
import org.bookholder.view.settings.WindowSettings;
import org.junit.jupiter.api.Test;
import org.lwjgl.opengl.ARBRobustness;
import org.lwjgl.opengl.GL;

/** A graphics driver that loses the window's context, planted: no driver can be made to do so on demand. */
final class ContextLossTest {
    private final SampleState lesson = SampleState.lesson();

    @Test
    void aLostContextEndsTheWindowWithAFaultAndNotTheReading() throws ProblemException {
        Needs.display();
        AtomicInteger pictures = new AtomicInteger();
        List<Command> commands = new ArrayList<>();
        ContextWatch third =
                new ContextWatch(() -> pictures.incrementAndGet() < 3 ? 0 : ARBRobustness.GL_GUILTY_CONTEXT_RESET_ARB);
        try (ReadingWindow window =
                ReadingWindow.open(WindowSettings.defaults(), lesson.script(), WindowPlace.hidden(800, 600), third)) {
            assertThatThrownBy(() -> window.run(lesson::state, commands::add, System::nanoTime))
                    .isInstanceOf(IllegalStateException.class)
                    .hasMessageContaining("the graphics driver has lost the window's picture (reset status 0x8253)");
            assertThat(pictures).hasValue(3);
            assertThat(commands).isEmpty();
        }
        // What the program does then: another window, which works.
        AtomicInteger asked = new AtomicInteger();
        try (ReadingWindow window =
                ReadingWindow.open(WindowSettings.defaults(), lesson.script(), WindowPlace.hidden(800, 600))) {
            assertThat(GL.getCapabilities().GL_ARB_robustness).isTrue();
            window.run(lesson::state, commands::add, System::nanoTime, () -> asked.incrementAndGet() > 5);
            assertThat(window.shown()).isPresent();
        }
    }
}
