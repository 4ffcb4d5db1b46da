package org.bookholder.view.gl;

import static org.lwjgl.glfw.GLFW.glfwPollEvents;

import java.util.List;
import org.bookholder.problem.ProblemException;
import org.bookholder.view.settings.Display;

/** The monitors on which a reading window can open. Main thread only. */
public final class Displays {
    private Displays() {}

    /**
     * The monitors that are connected now.
     *
     * @throws ProblemException if there is no display
     */
    public static List<Display> all() throws ProblemException {
        Glfw.start();
        // Monitors that were plugged in or out are noticed while events are looked at.
        glfwPollEvents();
        return Monitors.all().stream()
                .map(monitor -> new Display(
                        monitor.number(),
                        monitor.name(),
                        monitor.x(),
                        monitor.y(),
                        monitor.width(),
                        monitor.height(),
                        monitor.millimetres()))
                .toList();
    }
}
