package org.bookholder.view.gl;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lwjgl.glfw.GLFW.glfwPollEvents;

import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Needs;
import org.bookholder.view.Scene.Screen;
import org.bookholder.view.WindowPlace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A window where the system wants everything larger, on a display whose units are pixels. */
@Timeout(60)
final class ContentScaleTest {
    @ParameterizedTest
    @ValueSource(doubles = {1, 1.5, 2})
    void theWindowIsSoMuchLarger(double scale) throws ProblemException {
        Needs.display();
        Glfw.start();
        try (Window window = Window.open("scaled", WindowPlace.windowed(640, 360), monitor -> scale)) {
            Screen screen = window.screen();
            while (screen.width() != Math.round(640 * scale) || screen.height() != Math.round(360 * scale)) {
                glfwPollEvents();
                screen = window.screen();
            }
            assertThat(screen.monitorPixels()).isGreaterThanOrEqualTo(720);
            assertThat(window.place()).isEqualTo(WindowPlace.windowed(640, 360));
        }
    }

    @Test
    void theSystemTellsAScale() throws ProblemException {
        Needs.display();
        Glfw.start();
        assertThat(Monitors.all())
                .isNotEmpty()
                .allSatisfy(monitor ->
                        assertThat(ContentScale.ofSystem().of(monitor.handle())).isBetween(0.5, 8.0));
    }
}
