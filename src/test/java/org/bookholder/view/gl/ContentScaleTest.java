package org.bookholder.view.gl;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lwjgl.glfw.GLFW.glfwWaitEventsTimeout;

import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Needs;
import org.bookholder.view.Scene.Screen;
import org.bookholder.view.settings.WindowPlace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A window where the system wants everything larger, on a display whose units are pixels. */
final class ContentScaleTest {
    private static final long PATIENCE_NANOS = 20_000_000_000L;

    @ParameterizedTest
    @ValueSource(doubles = {1, 1.5, 2})
    void theWindowIsScaled(double scale) throws ProblemException {
        Needs.display();
        DisplayWatch display = Glfw.start();
        try (Window window = Window.open(display, "scaled", WindowPlace.windowed(640, 360), monitor -> scale)) {
            long end = System.nanoTime() + PATIENCE_NANOS;
            Screen screen = window.screen();
            while (screen.width() != Math.round(640 * scale) || screen.height() != Math.round(360 * scale)) {
                assertThat(System.nanoTime() - end)
                        .as("nanoseconds past patience")
                        .isNegative();
                glfwWaitEventsTimeout(0.02);
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
